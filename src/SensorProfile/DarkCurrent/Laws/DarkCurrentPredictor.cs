using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// Predicts the dark current of the typical pixel from a stored profile: the value of the selected law, with the spread
/// of the other laws in the uncertainty.
/// </summary>
internal sealed class DarkCurrentPredictor
{
    private readonly LawComparison laws;
    private readonly double coldest,
        warmest;
    private readonly long samples;

    private DarkCurrentPredictor(LawComparison laws, double coldest, double warmest, long samples) =>
        (this.laws, this.coldest, this.warmest, this.samples) = (laws, coldest, warmest, samples);

    /// <summary>Name of the selected law.</summary>
    public string Law => laws.Fits[laws.Selected].Law.Name;

    /// <summary>Makes a predictor from a profile; null when it contains no temperature law.</summary>
    /// <exception cref="ArgumentException">A stored model does not match a known law.</exception>
    public static DarkCurrentPredictor? FromProfile(DarkCurrentProfile profile) =>
        From(profile.Models, profile.Selected, profile.ReferenceTemperature, profile.MeasuredRange);

    /// <summary>Rate and doubling temperature at a temperature.</summary>
    public DarkCurrentPrediction At(double temperatureCelsius)
    {
        (double rate, double rateUncertainty) = laws.Combine(f => f.RateAt(temperatureCelsius));
        (double doubling, double doublingUncertainty) = laws.Combine(f => f.DoublingAt(temperatureCelsius));
        return new DarkCurrentPrediction(
            temperatureCelsius,
            new Measurement(
                rate,
                rateUncertainty,
                "e-/px/s",
                samples,
                Law + " law, spread between the possible laws included"
            ),
            new Measurement(
                doubling,
                doublingUncertainty,
                "°C",
                samples,
                $"ln 2/(d ln I/dT) of the {Law} law, spread between the possible laws included"
            ),
            temperatureCelsius < coldest || temperatureCelsius > warmest
        );
    }

    private static DarkCurrentPredictor? From(
        IReadOnlyList<DarkCurrentModel> models,
        string? selected,
        double? reference,
        IReadOnlyList<double>? range
    )
    {
        int index = models.ToList().FindIndex(m => m.Name == selected);
        if (index < 0 || reference is not { } referenceTemperature)
            return null;
        FittedLaw[] fits = [.. models.Select(m => ModelRecord.ToFit(m, referenceTemperature))];
        double[] weights = [.. models.Select((m, i) => m.Weight ?? (i == index ? 1 : 0))];
        if (!(weights.Sum() > 0))
            weights[index] = 1;
        double[] measured = range is { Count: > 0 }
            ? [range[0], range[^1]]
            : [double.PositiveInfinity, double.NegativeInfinity];
        long samples = models[index].Parameters.Count > 0 ? models[index].Parameters[0].Samples : 0;
        return new DarkCurrentPredictor(
            new LawComparison(fits, [.. models.Select(m => m.InformationCriterion)], weights, index),
            measured[0],
            measured[1],
            samples
        );
    }
}
