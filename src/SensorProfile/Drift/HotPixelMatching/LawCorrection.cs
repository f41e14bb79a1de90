using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// How a session's temperature law scaled its dark-rate map, relative to the law of the first session.
/// </summary>
/// <remarks>
/// A dark-rate map combines all temperatures, each brought to the reference by the session's own law of the typical
/// pixel: rate = Σ w(T)·f(T)·rate(T), f(T) = law(reference)/law(T). That law is fitted to levels and inherits the error
/// of the black level; an error of a few per cent at the cold end changes the scale of the map in proportion to the
/// weight of the warm frames. The sensor has one law, so the maps are compared as if every session had used the first
/// session's: the factor is 1/Σ w(T)·f(T)/f₁(T). The weights are those of the map (inverse variances of the slope of
/// the dark signal, and of pixels whose activation differs by 10 %), computed from exposures, frames, read noise and
/// rates.
/// </remarks>
internal static class LawCorrection
{
    private const double LawSpread = 0.1; // the same as in the weights of the maps

    // the weights computed here are approximate: uncertainty as a share of the correction
    private const double WeightDoubt = 0.2;

    /// <summary>
    /// The scale factor and its relative uncertainty; 1 without uncertainty when the law or its points are unknown.
    /// </summary>
    /// <param name="session">A session.</param>
    /// <param name="first">The first session.</param>
    /// <param name="reference">Temperature of the comparison, °C.</param>
    public static (double Factor, double Doubt) Compute(ModeProfile session, ModeProfile first, double reference)
    {
        if (
            Law(session) is not { } law
            || Law(first) is not { } common
            || Weights(session, law, reference) is not { } own
            || Weights(first, common, reference) is not { } others
        )
            return (1, 0);
        double Brought(DarkCurrentPredictor by, double t) => by.At(reference).Rate.Value / by.At(t).Rate.Value;
        double factor = 1 / own.Sum(w => w.Weight * Brought(law, w.Celsius) / Brought(common, w.Celsius));
        if (!double.IsFinite(factor) || factor <= 0)
            return (1, 0);
        Measurement doubling = common.At(reference).DoublingTemperature;
        // at other temperatures the error of the law is not shared
        double distance =
            own.Sum(w => w.Weight * (reference - w.Celsius)) - others.Sum(w => w.Weight * (reference - w.Celsius));
        double shots = doubling.Value is > 0 and < 100
            ? Math.Abs(distance) * Math.Log(2) * doubling.StandardUncertainty / (doubling.Value * doubling.Value)
            : 0;
        return (factor, double.Hypot(WeightDoubt * (factor - 1), shots));
    }

    /// <summary>The law of a session; null when it has none this program knows.</summary>
    public static DarkCurrentPredictor? Law(ModeProfile mode)
    {
        try
        {
            return mode.DarkCurrent is { } dark ? DarkCurrentPredictor.FromProfile(dark) : null;
        }
        catch (ArgumentException) // a law from a later version
        {
            return null;
        }
    }

    private static IReadOnlyList<(double Celsius, double Weight)>? Weights(
        ModeProfile session,
        DarkCurrentPredictor law,
        double reference
    )
    {
        double read = session.ReadNoise?.Value ?? 0,
            typical = law.At(reference).Rate.Value;
        List<(double Celsius, double Weight)> weights = [];
        foreach (
            DarkCurrentPoint point in session.DarkCurrent!.Points.Where(p => p.Exposures.Count > 1 && p.Frames > 0)
        )
        {
            double rate = law.At(point.Temperature).Rate.Value,
                factor = typical / rate;
            double noise = SlopeVariance(point, read, Math.Max(rate, 0)) * factor * factor,
                otherLaw = Math.Pow(LawSpread * Math.Log(factor) * typical, 2);
            if (noise + otherLaw > 0 && double.IsFinite(noise))
                weights.Add((point.Temperature, 1 / (noise + otherLaw)));
        }
        double sum = weights.Sum(w => w.Weight);
        return weights.Count == 0 ? null : [.. weights.Select(w => (w.Celsius, w.Weight / sum))];
    }

    /// <summary>
    /// Variance of the slope through a pixel's means, (e-/s)²: 1/Σ n·(t − t̄)²/σ², σ² = R² + I·t; the frames of a
    /// temperature are assumed evenly shared among its exposures.
    /// </summary>
    private static double SlopeVariance(DarkCurrentPoint point, double readNoise, double rate)
    {
        double frames = (double)point.Frames / point.Exposures.Count;
        double Weight(double t) => frames / (readNoise * readNoise + rate * t + 0.01);
        double all = point.Exposures.Sum(Weight),
            mean = point.Exposures.Sum(t => Weight(t) * t) / all;
        return 1 / point.Exposures.Sum(t => Weight(t) * (t - mean) * (t - mean));
    }
}
