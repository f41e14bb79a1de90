using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// What the temperature law of a session did to the scale of its dark-rate map, against the law of the first session.
/// </summary>
/// <remarks>
/// A dark-rate map joins all temperatures, each brought to the reference by the session's own law of the typical pixel:
/// rate = Σ w(T)·f(T)·rate(T), f(T) = law(reference)/law(T). That law
/// is fitted to levels and errs with the black level; an error of the cold end by a few per cent moves the scale of the
/// map by the share of the warm frames. The sensor has one
/// law, so the maps are compared as if the first session's had been used in all: the factor is 1/Σ w(T)·f(T)/f₁(T). The
/// weights are those of the map (inverse variances of the slope
/// of the dark signal, and of pixels whose activation differs by 10 %), computed from exposures, frames, read noise and
/// rates.
/// </remarks>
internal static class LawCorrection
{
    private const double LawSpread = 0.1; // as the maps are weighted

    // share of the correction that the weights computed here may be off by
    private const double WeightDoubt = 0.2;

    /// <summary>
    /// Factor on the scale, with its relative uncertainty; 1 without one where the law or its points are not known.
    /// </summary>
    /// <param name="session">A session.</param>
    /// <param name="first">The first one.</param>
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
        // other temperatures do not share the law's error
        double distance =
            own.Sum(w => w.Weight * (reference - w.Celsius)) - others.Sum(w => w.Weight * (reference - w.Celsius));
        double shots = doubling.Value is > 0 and < 100
            ? Math.Abs(distance) * Math.Log(2) * doubling.StandardUncertainty / (doubling.Value * doubling.Value)
            : 0;
        return (factor, double.Hypot(WeightDoubt * (factor - 1), shots));
    }

    /// <summary>The law of a session; null when it has none that this program knows.</summary>
    public static DarkCurrentPredictor? Law(ModeProfile mode)
    {
        try
        {
            return mode.DarkCurrent is { } dark ? DarkCurrentPredictor.FromProfile(dark) : null;
        }
        catch (ArgumentException) // a law of a later version
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
    /// temperature are shared evenly among its exposures.
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
