using SensorProfile.FixedPattern.Input;
using SensorProfile.Frames;
using SensorProfile.Profiles.Darks;
using static System.FormattableString;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>
/// Findings where hot pixels and probe disagree: one sentence per kind of disagreement, with the largest as an example.
/// </summary>
internal static class ThermometerFindings
{
    private const double Sigmas = 5; // between sets, because many are compared
    private const double DriftSigmas = 4; // within a set, of both drifts combined
    private const double NotableDrift = 0.15,
        NotableDifference = 0.25; // °C: dark current changes by 2 % and 3 %

    // a remedy for both disagreements
    private const string Way = ", or take the temperatures from the hot pixels.";

    /// <summary>
    /// The same finding after the temperatures were taken from the hot pixels: a lagging probe is then merely worth
    /// knowing.
    /// </summary>
    public static Finding WhereReplaced(Finding finding) =>
        finding with
        {
            Severity = finding.Code == FindingCodes.ProbeMissesDrift ? Severity.Note : finding.Severity,
            Message = finding.Message.Replace(Way, ".", StringComparison.Ordinal),
        };

    /// <summary>Findings for all sets of a mode that have readings.</summary>
    public static IReadOnlyList<Finding> Judge(IReadOnlyList<(HotPixelTemperature Record, DarkExposure Exposure)> sets)
    {
        ILookup<Kind, (HotPixelTemperature Record, DarkExposure Exposure)> byKind = sets.ToLookup(s =>
            KindOf(s.Record, s.Exposure)
        );
        List<Finding> findings = [];
        if (byKind[Kind.MissedDrift].Any())
            findings.Add(MissedDrift([.. byKind[Kind.MissedDrift]]));
        if (byKind[Kind.Offset].Any())
            findings.Add(Offset([.. byKind[Kind.Offset]]));
        return findings;
    }

    private enum Kind
    {
        Agree,
        MissedDrift,
        Offset,
    }

    private static Kind KindOf(HotPixelTemperature record, DarkExposure exposure)
    {
        if (
            record.Drift is { } drift
            && record.ReadingDrift is { } probe
            && Math.Abs(drift.Value - probe)
                > Math.Max(
                    NotableDrift,
                    DriftSigmas
                        * Math.Sqrt(
                            drift.StandardUncertainty * drift.StandardUncertainty + ReadingDriftVariance(exposure)
                        )
                )
        )
            return Kind.MissedDrift;
        return
            record.Difference is { } difference
            && Math.Abs(difference.Value) > Math.Max(NotableDifference, Sigmas * difference.StandardUncertainty)
            ? Kind.Offset
            : Kind.Agree;
    }

    private static Finding MissedDrift((HotPixelTemperature Record, DarkExposure Exposure)[] sets)
    {
        (HotPixelTemperature record, DarkExposure exposure) = sets.MaxBy(s =>
            Math.Abs(s.Record.Drift!.Value - s.Record.ReadingDrift!.Value)
        );
        string reading = Still(exposure)
            ? "stood still"
            : Invariant($"changed by {record.ReadingDrift:+0.00;−0.00} °C");
        return new(
            FindingCodes.ProbeMissesDrift,
            Severity.Warning,
            Invariant($"During the {Name(record, exposure)}, the hot pixels show that the sensor changed by ")
                + Invariant($"{record.Drift!.Value:+0.00;−0.00} °C (± {record.Drift.StandardUncertainty:0.00}) ")
                + Invariant($"while the reading {reading}{More(sets.Length, "less there")}: it is stuck or ")
                + "lags, so wait longer before the first frame"
                + Way,
            Names(sets)
        );
    }

    private static Finding Offset((HotPixelTemperature Record, DarkExposure Exposure)[] sets)
    {
        (HotPixelTemperature record, DarkExposure exposure) = sets.MaxBy(s => Math.Abs(s.Record.Difference!.Value));
        Measurement difference = record.Difference!;
        return new(
            FindingCodes.ProbeOffsetBetweenSets,
            Severity.Warning,
            Invariant(
                $"By their hot pixels, the {Name(record, exposure)} were {Math.Abs(difference.Value):0.00} °C (± "
            )
                + Invariant($"{difference.StandardUncertainty:0.00}) ")
                + Invariant($"{(difference.Value > 0 ? "warmer" : "colder")} than the temperature reading says, ")
                + Invariant($"relative to the longest darks{More(sets.Length, "by less")}: the sensor had not ")
                + "settled, or its hot pixels do not grow in proportion to the exposure; repeat the sets "
                + "in a different order to find out"
                + Way,
            Names(sets)
        );
    }

    private static string Name(HotPixelTemperature record, DarkExposure exposure) =>
        Invariant($"{exposure.TakenSeconds:0.##} s darks at {QuantityText.Temperature(record.Reading)}");

    private static string More(int sets, string how) =>
        sets == 1 ? "" : $" (and {Counted.Nouns(sets - 1, "set")} more, {how})";

    private static string[] Names((HotPixelTemperature Record, DarkExposure Exposure)[] sets) =>
        [.. sets.SelectMany(s => s.Exposure.Frames).Select(f => f.Name)];

    private static bool Still(DarkExposure exposure) => exposure.Readings.Distinct().Count() == 1;

    /// <summary>
    /// Variance of the drift of the probe, °C²: from the scatter of its readings about their line; for equal readings,
    /// only rounding counts, first and last uniform within ±<see cref="ThermometerReport.ReadingDoubt"/>.
    /// </summary>
    private static double ReadingDriftVariance(DarkExposure exposure)
    {
        if (Still(exposure))
            return 2 * ThermometerReport.ReadingDoubt * ThermometerReport.ReadingDoubt / 3;
        double doubt = ThermometerReport.ReadingLine(exposure)!.StandardUncertainty;
        return doubt * doubt;
    }
}
