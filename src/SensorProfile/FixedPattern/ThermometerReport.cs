using SensorProfile.Fitting;
using SensorProfile.Profiles;
using static System.FormattableString;

namespace SensorProfile.FixedPattern;

/// <summary>Compares the hot pixels' temperature with the probe's readings, set by set.</summary>
internal static class ThermometerReport
{
    /// <summary>°C, of a single reading of a probe: half of its usual step.</summary>
    public const double ReadingDoubt = 0.05;

    private const double Sigmas = 5;                     // between sets: many are compared
    private const double DriftSigmas = 4;                // inside a set: of both drifts together
    private const double NotableDrift = 0.15, NotableDifference = 0.25;       // °C: dark current changes by 2 % and 3 %

    /// <summary>Records, findings, and the temperature of every frame by name.</summary>
    public static (IReadOnlyList<HotPixelTemperature> Records, IReadOnlyList<Finding> Findings, IReadOnlyDictionary<string, double> ByFrame) Of(PatternInput input, HotPixelThermometer thermometer)
    {
        var records = new List<HotPixelTemperature>();
        var findings = new List<Finding>();
        var byFrame = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (DarkSeries series in input.Series)
        {
            if (thermometer.Temperatures(series) is not { } sets) continue;
            foreach ((string name, double celsius) in FrameTemperatures.Of(series, sets)) byFrame[name] = celsius;
            int longest = Enumerable.Range(0, sets.Count).MaxBy(g => series.Exposures[g].TakenSeconds);
            double anchor = Reading(series.Exposures[longest]) ?? series.TemperatureCelsius;
            for (int g = 0; g < sets.Count; g++)
            {
                DarkExposure exposure = series.Exposures[g];
                if (sets[g].Frames.Any(m => !double.IsFinite(m.Value))) continue;
                HotPixelTemperature record = Record(series, exposure, sets[g], anchor, g == longest, thermometer.RelativeDoubt);
                records.Add(record);
                if (exposure.Readings.Count > 0 && Judge(record, exposure) is { } finding) findings.Add(finding);
            }
        }
        return (records, findings, byFrame);
    }

    private static double? Reading(DarkExposure exposure)
    {
        double[] known = [.. exposure.Readings.OfType<double>()];
        return known.Length == 0 ? null : known.Average();
    }

    private static HotPixelTemperature Record(DarkSeries series, DarkExposure exposure, ThermometerSet set, double anchor, bool isLongest, double relativeDoubt)
    {
        int frames = set.Frames.Count;
        double reading = Reading(exposure) ?? series.TemperatureCelsius;
        double doubt = Math.Sqrt(Math.Pow(set.Mean.StandardUncertainty, 2) + 2 * ReadingDoubt * ReadingDoubt / frames);
        (Measurement? drift, double scatter) = Drift([.. set.Frames.Select(f => f.Value)], set.OwnUncertainties, relativeDoubt);
        return new HotPixelTemperature
        {
            Reading = reading,
            Exposure = exposure.TakenSeconds,
            Frames = frames,
            Difference = isLongest ? null : new(set.Mean.Value - (reading - anchor), doubt, "°C", frames, "hot pixels minus readings, against the longest exposure at this temperature"),
            Drift = drift,
            ReadingDrift = ReadingLine(exposure) is { } probe ? Math.Round(probe.Value, 6) : null,
            Scatter = scatter,
        };
    }

    /// <summary>Variance of the probe's own drift, °C²: the scatter of its readings about their line; of equal readings only their rounding counts, first and last uniform within ±<see cref="ReadingDoubt"/>.</summary>
    private static double ReadingDriftVariance(DarkExposure exposure, bool still)
    {
        if (still) return 2 * ReadingDoubt * ReadingDoubt / 3;
        double doubt = ReadingLine(exposure)!.StandardUncertainty;
        return doubt * doubt;
    }

    private static Measurement? ReadingLine(DarkExposure exposure) => exposure.Readings.Count > 0 && exposure.Readings.All(r => r is not null)
        ? Drift([.. exposure.Readings.Select(r => r!.Value)], [.. exposure.Readings.Select(_ => ReadingDoubt)], 0).Drift : null;

    /// <summary>Change from first to last frame by a straight line through the frames in their order; its uncertainty holds their scatter, and the relative doubt that all share.</summary>
    private static (Measurement? Drift, double Scatter) Drift(double[] values, IReadOnlyList<double> uncertainties, double relativeDoubt)
    {
        if (values.Length < 3) return (null, 0);
        StraightLine line = StraightLine.Fit([.. Enumerable.Range(0, values.Length).Select(i => (double)i)], values, [.. uncertainties]);
        double span = values.Length - 1, widened = line.SlopeUncertainty * Math.Sqrt(Math.Max(1, line.ReducedChiSquared));
        double scatter = Math.Sqrt(values.Select((v, i) => Math.Pow(v - line.Intercept - line.Slope * i, 2)).Sum() / (values.Length - 2));
        return (new(line.Slope * span, Math.Sqrt(widened * widened + Math.Pow(line.Slope * relativeDoubt, 2)) * span, "°C", values.Length, "straight line through the frames' temperatures by their hot pixels"), scatter);
    }

    private static Finding? Judge(HotPixelTemperature record, DarkExposure exposure)
    {
        string[] names = [.. exposure.Frames.Select(f => f.Name)];
        bool still = exposure.Readings.Distinct().Count() == 1;
        if (record.Drift is { } drift && record.ReadingDrift is { } probe
            && Math.Abs(drift.Value - probe) > Math.Max(NotableDrift, DriftSigmas * Math.Sqrt(drift.StandardUncertainty * drift.StandardUncertainty + ReadingDriftVariance(exposure, still))))
        {
            return new("probe-misses-drift", Severity.Warning, Invariant(
                $"During the {exposure.TakenSeconds:0.##} s darks at {record.Reading:0.0} °C the hot pixels say that the sensor changed by {drift.Value:+0.00;-0.00} °C (± {drift.StandardUncertainty:0.00}) where its probe {(still ? "stood still" : Invariant($"changed by {probe:+0.00;-0.00} °C"))}: the reading is stuck or late, so wait longer before the first frame, or take the temperatures from the hot pixels (--temperatures hot-pixels)."), names);
        }
        if (record.Difference is { } difference && Math.Abs(difference.Value) > Math.Max(NotableDifference, Sigmas * difference.StandardUncertainty))
            return new("probe-offset-between-sets", Severity.Warning, Invariant(
                $"The {exposure.TakenSeconds:0.##} s darks at {record.Reading:0.0} °C were {Math.Abs(difference.Value):0.00} °C (± {difference.StandardUncertainty:0.00}) {(difference.Value > 0 ? "warmer" : "colder")} by their hot pixels than the probe says against the longest darks: the sensor had not settled, or its hot pixels are not in proportion to the exposure; take the sets again in another order to tell, or take the temperatures from the hot pixels (--temperatures hot-pixels)."), names);
        return null;
    }
}
