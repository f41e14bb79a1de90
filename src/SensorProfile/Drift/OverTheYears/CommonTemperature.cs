using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Temperatures at which several profiles can be compared.</summary>
internal static class CommonTemperature
{
    private const double Same = 0.5; // °C; the same tolerance within which frames are pooled

    /// <summary>
    /// For the dark current: the temperature asked for; else the last profile's reference if all profiles cover it;
    /// else the middle of their common range; null when there is none.
    /// </summary>
    public static double? OfDark(MatchedMode mode, DriftOptions options, List<Finding> findings)
    {
        DarkCurrentProfile?[] darks =
        [
            .. Enumerable.Range(0, mode.Members.Count).Select(i => mode.Mode(i).DarkCurrent),
        ];
        int[] without =
        [
            .. Enumerable
                .Range(0, darks.Length)
                .Where(i => darks[i] is not { Models.Count: > 0, Selected: not null, MeasuredRange: [_, ..] }),
        ];
        if (without.Length > 0)
        {
            // the law exists in ADU; only the gain is missing
            int[] inAdu =
            [
                .. without.Where(i =>
                    mode.Mode(i).DarkCurrentAdu is { Models.Count: > 0, Selected: not null, MeasuredRange: [_, ..] }
                ),
            ];
            string[] why = [.. Lacking(mode, [.. without.Except(inAdu)], Law), .. Lacking(mode, inAdu, Electrons)];
            findings.Add(
                new Finding(
                    FindingCodes.DarkCurrentNotCompared,
                    Severity.Warning,
                    $"The dark current at {mode.Name} was not compared: {string.Join(" ", why)}",
                    [.. without.Select(i => mode.Members[i].Profile.File)]
                )
            );
            return null;
        }
        double low = darks.Max(d => d!.MeasuredRange![0]),
            high = darks.Min(d => d!.MeasuredRange![^1]);
        double? wanted = options.ReferenceTemperature ?? darks[^1]!.ReferenceTemperature;
        if (wanted is double t && t >= low - Same && t <= high + Same)
            return t;
        if (low <= high + Same && options.ReferenceTemperature is null)
            return Math.Round((low + high) / 2, 1);
        findings.Add(
            new Finding(
                FindingCodes.DarkRangesApart,
                Severity.Warning,
                low <= high
                    ? $"The dark current at {mode.Name} was not compared: {Plain.Celsius(wanted!.Value)} lies outside the "
                        + $"{Plain.Celsius(low)} to {Plain.Celsius(high)} that all profiles measured."
                    : $"The dark current at {mode.Name} was not compared: no temperature was measured in all profiles. "
                        + "Take next year's darks at this year's temperatures."
            )
        );
        return null;
    }

    /// <summary>
    /// For hot pixels and glow, which hold at each profile's own reference: that temperature if it is the same in all;
    /// otherwise null.
    /// </summary>
    public static double? OfPattern(MatchedMode mode, List<Finding> findings)
    {
        double?[] references =
        [
            .. Enumerable
                .Range(0, mode.Members.Count)
                .Select(i =>
                    mode.Mode(i).FixedPattern is { HotPixelCurve.Count: > 0 } p ? p.ReferenceTemperature : null
                ),
        ];
        if (references.Any(r => r is null))
            return null;
        if (references.Max() - references.Min() <= Same)
            return references[^1];
        findings.Add(
            new Finding(
                FindingCodes.PatternTemperaturesApart,
                Severity.Warning,
                $"Hot pixels and glow at {mode.Name} were not compared: they refer to "
                    + $"{Plain.Celsius(references.Min()!.Value)} in one profile and to "
                    + $"{Plain.Celsius(references.Max()!.Value)} in another. Characterise all sessions at one reference "
                    + "temperature."
            )
        );
        return null;
    }

    private const string Law = "no temperature law. Darks of three exposures at three temperatures give one.",
        Electrons = "no dark current in electrons, since the gain is unknown. Flat pairs at the same settings give it.";

    private static IEnumerable<string> Lacking(MatchedMode mode, int[] members, string what) =>
        members.Length == 0 ? [] : [$"{Files(mode, members)} {(members.Length == 1 ? "holds" : "hold")} {what}"];

    private static string Files(MatchedMode mode, int[] members) =>
        string.Join(", ", members.Select(i => mode.Members[i].Profile.File));
}
