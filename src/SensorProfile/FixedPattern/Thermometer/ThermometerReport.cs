using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>Compares the temperature from the hot pixels with the probe readings, set by set.</summary>
internal static class ThermometerReport
{
    /// <summary>Uncertainty of a single probe reading, °C: half of the usual step.</summary>
    public const double ReadingDoubt = 0.05;

    /// <summary>Makes records, findings, and the temperature of every frame by name.</summary>
    public static (
        IReadOnlyList<HotPixelTemperature> Records,
        IReadOnlyList<Finding> Findings,
        IReadOnlyDictionary<string, double> ByFrame
    ) Measure(PatternInput input, HotPixelThermometer thermometer)
    {
        var records = new List<HotPixelTemperature>();
        var judged = new List<(HotPixelTemperature Record, DarkExposure Exposure)>();
        var byFrame = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (DarkSeries series in input.Series)
        {
            if (thermometer.Temperatures(series) is not { } sets)
                continue;
            foreach ((string name, double celsius) in FrameTemperatures.Compute(series, sets))
                byFrame[name] = celsius;
            int longest = Enumerable.Range(0, sets.Count).MaxBy(g => series.Exposures[g].TakenSeconds);
            double anchor = Reading(series.Exposures[longest]) ?? series.TemperatureCelsius;
            for (int g = 0; g < sets.Count; g++)
            {
                DarkExposure exposure = series.Exposures[g];
                if (sets[g].Frames.Any(m => !double.IsFinite(m.Value)))
                    continue;
                HotPixelTemperature record = Record(
                    series,
                    exposure,
                    sets[g],
                    anchor,
                    g == longest,
                    thermometer.RelativeDoubt
                );
                records.Add(record);
                if (exposure.Readings.Count > 0)
                    judged.Add((record, exposure));
            }
        }
        return (records, ThermometerFindings.Judge(judged), byFrame);
    }

    private static double? Reading(DarkExposure exposure)
    {
        double[] known = [.. exposure.Readings.OfType<double>()];
        return known.Length == 0 ? null : known.Average();
    }

    private static HotPixelTemperature Record(
        DarkSeries series,
        DarkExposure exposure,
        ThermometerSet set,
        double anchor,
        bool isLongest,
        double relativeDoubt
    )
    {
        int frames = set.Frames.Count;
        double reading = Reading(exposure) ?? series.TemperatureCelsius;
        double doubt = Math.Sqrt(Math.Pow(set.Mean.StandardUncertainty, 2) + 2 * ReadingDoubt * ReadingDoubt / frames);
        (Measurement? drift, double scatter) = Drift(
            [.. set.Frames.Select(f => f.Value)],
            set.OwnUncertainties,
            relativeDoubt
        );
        return new HotPixelTemperature
        {
            Reading = reading,
            Exposure = exposure.TakenSeconds,
            Frames = frames,
            Difference = isLongest
                ? null
                : new(
                    set.Mean.Value - (reading - anchor),
                    doubt,
                    "°C",
                    frames,
                    "hot pixels minus readings, against the longest exposure at this temperature"
                ),
            Drift = drift,
            ReadingDrift = ReadingLine(exposure) is { } probe ? Math.Round(probe.Value, 6) : null,
            Scatter = scatter,
        };
    }

    internal static Measurement? ReadingLine(DarkExposure exposure) =>
        exposure.Readings.Count > 0 && exposure.Readings.All(r => r is not null)
            ? Drift(
                [.. exposure.Readings.Select(r => r!.Value)],
                [.. exposure.Readings.Select(_ => ReadingDoubt)],
                0
            ).Drift
            : null;

    /// <summary>
    /// Change from first to last frame, from a straight line through the frames in order; its uncertainty includes
    /// their scatter and the relative uncertainty common to all.
    /// </summary>
    private static (Measurement? Drift, double Scatter) Drift(
        double[] values,
        IReadOnlyList<double> uncertainties,
        double relativeDoubt
    )
    {
        if (values.Length < 3)
            return (null, 0);
        StraightLine line = StraightLine.Fit(
            [.. Enumerable.Range(0, values.Length).Select(i => (double)i)],
            values,
            [.. uncertainties]
        );
        double span = values.Length - 1,
            widened = line.SlopeUncertainty * Math.Sqrt(Math.Max(1, line.ReducedChiSquared));
        double scatter = Math.Sqrt(
            values.Select((v, i) => Math.Pow(v - line.Intercept - line.Slope * i, 2)).Sum() / (values.Length - 2)
        );
        return (
            new(
                line.Slope * span,
                Math.Sqrt(widened * widened + Math.Pow(line.Slope * relativeDoubt, 2)) * span,
                "°C",
                values.Length,
                "straight line through the frames' temperatures by their hot pixels"
            ),
            scatter
        );
    }
}
