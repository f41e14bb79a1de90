using System.Globalization;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Drift.Patches;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>A comparison over the years in words.</summary>
internal static class DriftWords
{
    private const string Yearly = "\"Renew the dark library yearly\" (common practice, no source): ";

    public static AnswerWords Phrase(DriftAnswer answer) =>
        answer.Outcome switch
        {
            DriftVerdict.AnotherSensor => new(
                $"These are two sensors: the pixels of {answer.OtherSensors[0].File} are not those of "
                    + $"{answer.Compared[0]}, so nothing can be said of ageing.",
                $"{answer.OtherSensors[0].Reason} Keep the sessions of each camera apart, and compare each with its own "
                    + "earlier ones.",
                answer.Outcome
            ),
            DriftVerdict.CannotTell => new(
                $"Cannot tell whether the sensor has changed: {Lacking(answer.Gap)}.",
                Remedy(answer),
                answer.Outcome
            ),
            _ => new(Compared(answer), Reason(answer), answer.Outcome),
        };

    /// <summary>Rules of thumb, where profiles were compared.</summary>
    public static IReadOnlyList<string> RulesOfThumb(DriftAnswer answer) =>
        WasCompared(answer) ? [RuleOfThumb(answer.Years, answer.Outcome == DriftVerdict.Changed)] : [];

    /// <summary>Warnings about a comparison.</summary>
    public static IEnumerable<Finding> Findings(DriftAnswer answer)
    {
        foreach (ProbeOrAgeing probe in answer.Probes.Where(p => p.Verdict != ProbeVerdict.None))
            yield return new Finding(
                FindingCodes.ProbeOrAgeing,
                probe.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both ? Severity.Warning : Severity.Note,
                ProbeWords.Phrase(probe)
            );
        foreach (GrowingPatch patch in answer.HotPixelModes.SelectMany(h => h.Patches))
            yield return PatchFinding(patch);
    }

    private static bool WasCompared(DriftAnswer answer) =>
        answer.Outcome != DriftVerdict.AnotherSensor && answer.Gap is null or DriftGap.NoCommonQuantity;

    private static string Lacking(DriftGap? gap) =>
        gap switch
        {
            DriftGap.FewProfiles => "two profiles of one camera are needed",
            DriftGap.NoCommonSettings => "no two profiles were taken with the same settings",
            _ => "the profiles have no quantity in common",
        };

    private static string Remedy(DriftAnswer answer) =>
        answer.Gap switch
        {
            DriftGap.FewProfiles => answer.Compared.Count == 0
                ? "No profile could be used."
                : $"Only {answer.Compared[0]} could be used; characterise the camera again next season and compare the two.",
            DriftGap.NoCommonSettings =>
                "Only frames of the same gain, offset, binning and read-out mode can be compared; repeat one of the "
                    + "earlier sessions with its settings.",
            _ => "Characterise with bias, flat and dark frames, and compare again.",
        };

    private static string Compared(DriftAnswer answer) =>
        answer.Outcome == DriftVerdict.Changed
            ? Changed(answer.Changes, answer.Trends, answer.HotPixelModes, answer.Probes, answer.Years)
        : answer.Probes.FirstOrDefault(p => p.Verdict == ProbeVerdict.Probe) is { } drifted
            ? ProbeOnly(drifted, answer.Years)
        : Unchanged(answer.Changes, answer.Years);

    /// <summary>Age alone is a reason to check darks, never to throw them away.</summary>
    private static string RuleOfThumb(double years, bool changed) =>
        Yearly
        + (
            changed
                ? "here the measurements say that the camera has changed, whatever the age of the darks; check the "
                    + "darks themselves against a few fresh ones."
            : years > 1
                ? "these measurements give no reason to renew them; age alone is a reason to check (against a few "
                    + "fresh darks), never to throw darks away."
            : "the darks are younger than a year, and these measurements give no reason to renew them."
        )
        + " The only published pace of ageing of a dark library that we know of (an instrument in orbit, where radiation "
        + "ages sensors: ×1.10 to ×1.24 a year) is an upper bound for one on the ground.";

    /// <summary>The changes that harm a picture most come first; two measures of the same thing are reported once.</summary>
    private static string Changed(
        IReadOnlyList<DriftChange> changes,
        IReadOnlyList<DriftTrend> trends,
        IReadOnlyList<HotPixelDrift> hot,
        IReadOnlyList<ProbeOrAgeing> probes,
        double years
    )
    {
        DriftChange[] moved = [.. changes.Where(c => c.Changed && c.Quantity != QuantityNames.GrowingPatch)];
        bool Told(DriftChange c) =>
            (
                c.Quantity == QuantityNames.DarkRate
                && moved.Any(m => m.Quantity == QuantityNames.DarkRateByPixel && m.Mode == c.Mode)
            )
            || (
                QuantityNames.IsHotPixelCount(c.Quantity)
                && moved.Any(m => m.Quantity == QuantityNames.NewLessHealed && m.Mode == c.Mode)
            );
        string[] parts =
        [
            .. moved
                .Where(c => !Told(c))
                .OrderBy(c => Weight(c.Quantity))
                .ThenByDescending(c => Math.Abs(c.Z))
                .Select(Part)
                .Distinct()
                .Take(4),
        ];
        string[] slow =
        [
            .. trends
                .Where(t => t.Changed && !moved.Any(c => SameThing(c.Quantity, t.Quantity)))
                .OrderBy(t => Weight(t.Quantity))
                .Select(t => $"{QuantityWords.WithArticle(t.Quantity)} moves by {QuantityText.Of(t.PerYear)}")
                .Take(parts.Length > 0 ? 1 : 3),
        ];
        string patch = hot.SelectMany(h => h.Patches).FirstOrDefault() is { } p
            ? $"a patch of {Plain.Whole(p.NewPixels)} new hot pixels has grown {p.Where}"
            : "";
        return $"The sensor has changed in {Years(years)}: "
            + $"{string.Join(", ", [.. parts, .. slow, .. patch.Length > 0 ? [patch] : Array.Empty<string>()])}"
            + (
                probes.FirstOrDefault(p => p.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both) is { } drifted
                    ? $"; the temperature probe's own drift of {Drift(drifted)} has been taken out."
                    : "."
            );
    }

    /// <summary>The sentence for a drifted probe: the sensor itself is unchanged.</summary>
    private static string ProbeOnly(ProbeOrAgeing drifted, double years) =>
        $"Keep the darks and set the cooler {ProbeWords.Setting(drifted.StepOfHotPixels!)}: the temperature probe has "
        + $"drifted by {Drift(drifted)} in {Years(years)}; the sensor itself shows no change beyond the errors.";

    private static string Drift(ProbeOrAgeing drifted) =>
        QuantityText.Of(drifted.StepOfHotPixels! with { Value = Math.Abs(drifted.StepOfHotPixels.Value) });

    private static bool SameThing(string a, string b) =>
        a == b
        || (
            a.StartsWith(QuantityNames.DarkRate, StringComparison.Ordinal)
            && b.StartsWith(QuantityNames.DarkRate, StringComparison.Ordinal)
        )
        || (QuantityNames.IsHotPixelCount(b) && (a == QuantityNames.NewLessHealed || QuantityNames.IsHotPixelCount(a)));

    private static int Weight(string quantity) =>
        quantity switch
        {
            QuantityNames.DarkRateByPixel or QuantityNames.DarkRate => 0,
            QuantityNames.NewLessHealed => 1,
            QuantityNames.GlowTotal => 2,
            _ when QuantityNames.IsHotPixelCount(quantity) => 3,
            QuantityNames.ReadNoise or QuantityNames.RowNoise or QuantityNames.ColumnNoise => 4,
            QuantityNames.Gain or QuantityNames.FullWell => 5,
            _ => 6,
        };

    private static string Part(DriftChange c)
    {
        if (c.Quantity == QuantityNames.NewLessHealed)
            return $"{Plain.Whole((long)c.To.Value)} new hot pixels against {Plain.Whole((long)c.From.Value)} healed";
        double share = c.From.Value != 0 ? c.Change.Value / Math.Abs(c.From.Value) : 0;
        string by = Math.Abs(share) is > 0.001 and < 10
            ? Plain.Percent(Math.Abs(share))
            : QuantityText.Of(c.Change with { Value = Math.Abs(c.Change.Value) });
        return $"{QuantityWords.WithArticle(c.Quantity)} is {(c.Change.Value > 0 ? "up" : "down")} by {by}";
    }

    private static string Unchanged(IReadOnlyList<DriftChange> changes, double years)
    {
        string seen = changes.FirstOrDefault(c => c.Quantity == QuantityNames.DarkRate) is { From.Value: > 0 } dark
            ? $"; a change in dark current of {Plain.Percent(dark.Detectable / dark.From.Value)} would have been seen"
            : "";
        string blind = RetakeWords.SawDarks(changes) ? "" : "; the dark current and the hot pixels were not compared";
        return $"No change beyond the errors in {Years(years)}{seen}{blind}.";
    }

    private static string Reason(DriftAnswer answer)
    {
        int tests = answer.Changes.Count + answer.Trends.Count,
            beyond = answer.Changes.Count(c => c.Changed) + answer.Trends.Count(t => t.Changed);
        string probe = string.Join(
            "",
            answer.Probes.Where(p => p.Verdict != ProbeVerdict.None).Select(p => " " + ProbeWords.Phrase(p)).Distinct()
        );
        string of =
            tests == 1
                ? $"The one value compared {(beyond == 0 ? "did not move" : "moved")} by more than its error can explain. "
                : $"{(beyond == 0 ? "None" : Plain.Whole(beyond))} of the {Plain.Whole(tests)} "
                    + $"values{(answer.Trends.Count > 0 ? " and yearly slopes" : "")} compared moved by more than their errors can "
                    + "explain. ";
        return of
            + "The bar is set so high that a sensor in which nothing changed would show even one such move in at "
            + $"most {Plain.Percent(answer.Significance)} of reports like this one (Holm's rule).{probe}";
    }

    private static Finding PatchFinding(GrowingPatch patch) =>
        new(
            FindingCodes.GrowingPatch,
            Severity.Warning,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{patch.NewPixels} new hot pixels cluster {patch.Where} (centre {patch.X:F0}, {patch.Y:F0}, "
                    + $"radius {patch.Radius:F0} px) where chance would put {patch.Expected:F1}: watch it, and take new "
                    + $"darks that contain them."
            )
        );

    private static string Years(double years)
    {
        double days = years * TrendFit.DaysPerYear;
        string number = Plain.Number(years, 2);
        return days < 1.5 ? "a day"
            : years < 0.25 ? $"{Plain.Whole((long)Math.Round(days))} days"
            : number == "1" ? "1 year"
            : $"{number} years";
    }
}
