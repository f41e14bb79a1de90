using System.Globalization;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.Patches;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Turns a comparison into an answer that a person can act on.</summary>
internal static class DriftWords
{
    private const string Yearly = "\"Renew the dark library yearly\" (common practice, no source): ";

    /// <summary>"Renew yearly": age alone is a reason to check, never to throw away.</summary>
    public static string RuleOfThumb(double years, bool changed) =>
        Yearly
        + (
            changed
                ? "here the measurements say that the camera has changed, whatever the age of the darks; check the "
                    + "darks themselves against a few fresh ones."
            : years > 1
                ? "these measurements give no reason to renew; age alone is a reason to check (against a few "
                    + "fresh darks), never to throw darks away."
            : "the darks are younger than a year, and these measurements give no reason to renew them."
        )
        + " The only published pace of a dark library that we know (an instrument in orbit, where radiation "
        + "ages sensors: ×1.10 to ×1.24 a year) is an upper range for one on the ground.";

    public static DriftAnswer NothingToCompare(
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> refused,
        List<Finding> findings
    ) =>
        new()
        {
            Sentence = "Cannot tell whether the sensor has changed: two profiles of one camera are needed.",
            Reason =
                kept.Count == 0
                    ? "No profile could be used."
                    : $"Only {kept[0].File} could be used; characterise the camera again next season and compare the two.",
            Outcome = DriftVerdict.CannotTell,
            Verdict = DriftVerdictWord.Of(DriftVerdict.CannotTell),
            Compared = [.. kept.Select(p => p.File)],
            Refused = refused,
            Findings = findings,
        };

    /// <summary>Two sensors under one name: nothing can be said of ageing.</summary>
    public static DriftAnswer AnotherSensor(
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> others,
        IReadOnlyList<RejectedFile> refused,
        List<Finding> findings
    ) =>
        new()
        {
            Sentence =
                $"These are two sensors: the pixels of {others[0].File} are not those of {kept[0].File}, so nothing can "
                + "be said of ageing.",
            Reason =
                $"{others[0].Reason} Keep the sessions of each camera apart, and compare each with its own earlier ones.",
            Outcome = DriftVerdict.AnotherSensor,
            Verdict = DriftVerdictWord.Of(DriftVerdict.AnotherSensor),
            Compared = [.. kept.Select(p => p.File)],
            Camera = kept[0].Profile.Camera.Name,
            Refused = refused,
            Findings = findings,
        };

    public static DriftAnswer NoCommonMode(
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> refused,
        List<Finding> findings
    ) =>
        new()
        {
            Sentence = "Cannot tell whether the sensor has changed: no two profiles were taken with the same settings.",
            Reason =
                "Only frames of the same gain, offset, binning and read-out mode can be compared; repeat one of the "
                + "earlier sessions with its settings.",
            Outcome = DriftVerdict.CannotTell,
            Verdict = DriftVerdictWord.Of(DriftVerdict.CannotTell),
            Compared = [.. kept.Select(p => p.File)],
            Refused = refused,
            Findings = findings,
        };

    public static DriftAnswer Of(
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> refused,
        ModeComparison[] modes,
        ProbeOrAgeing[] probes,
        LibraryForecast[] library,
        List<Finding> findings,
        DriftOptions options
    )
    {
        DriftChange[] changes = [.. modes.SelectMany(m => m.Changes)];
        DriftTrend[] trends = [.. modes.SelectMany(m => m.Trends)];
        HotPixelDrift[] hot = [.. modes.Select(m => m.HotPixels).OfType<HotPixelDrift>()];
        bool changed = changes.Any(c => c.Changed) || trends.Any(t => t.Changed),
            compared = changes.Length + trends.Length > 0;
        double years = TrendFit.Years(kept[0].DateUtc, kept[^1].DateUtc);
        foreach (ProbeOrAgeing probe in probes.Where(p => p.Verdict != ProbeVerdict.None))
            findings.Add(
                new Finding(
                    "probe-or-ageing",
                    probe.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both ? Severity.Warning : Severity.Note,
                    probe.Sentence
                )
            );
        foreach (GrowingPatch patch in hot.SelectMany(h => h.Patches))
            findings.Add(PatchFinding(patch));
        DriftVerdict outcome =
            !compared ? DriftVerdict.CannotTell
            : changed ? DriftVerdict.Changed
            : DriftVerdict.Unchanged;
        IReadOnlyList<string> retake = DriftAdvice.Retake(changes, trends);
        return new DriftAnswer
        {
            Advice = compared
                ? DriftAdvice.Sentence(kept[0].DateUtc, retake, changed, hot.FirstOrDefault(), probes)
                : "",
            Retake = retake,
            Sentence =
                !compared ? "Cannot tell whether the sensor has changed: the profiles have no quantity in common."
                : changed ? Changed(changes, trends, hot, probes, years)
                : probes.FirstOrDefault(p => p.Verdict == ProbeVerdict.Probe) is { } drifted ? ProbeOnly(drifted, years)
                : Unchanged(changes, years),
            Reason = !compared
                ? "Characterise with bias, flat and dark frames, and compare again."
                : Reason(changes, trends, probes, options),
            Outcome = outcome,
            Verdict = DriftVerdictWord.Of(outcome),
            Compared = [.. kept.Select(p => p.File)],
            Dates = [.. kept.Select(p => p.DateUtc)],
            Camera = kept[^1].Profile.Camera.Name,
            Refused = refused,
            Changes = changes,
            Trends = trends,
            HotPixelModes = hot,
            Probes = probes,
            Library = library,
            Quantities = Quantities(modes),
            Findings = findings,
            RulesOfThumb = [RuleOfThumb(years, changed)],
        };
    }

    /// <summary>What troubles a picture most comes first; two measures of one thing are told once.</summary>
    private static string Changed(
        DriftChange[] changes,
        DriftTrend[] trends,
        HotPixelDrift[] hot,
        ProbeOrAgeing[] probes,
        double years
    )
    {
        DriftChange[] moved = [.. changes.Where(c => c.Changed && c.Quantity != "growingPatch")];
        bool Told(DriftChange c) =>
            (c.Quantity == "darkRate" && moved.Any(m => m.Quantity == "darkRateByPixel" && m.Mode == c.Mode))
            || (
                c.Quantity.StartsWith("hotPixelsAbove", StringComparison.Ordinal)
                && moved.Any(m => m.Quantity == "newLessHealed" && m.Mode == c.Mode)
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
                .Select(t => $"{QuantityNames.WithArticle(t.Quantity)} moves by {QuantityText.Of(t.PerYear)}")
                .Take(parts.Length > 0 ? 1 : 3),
        ];
        string patch = hot.SelectMany(h => h.Patches).FirstOrDefault() is { } p
            ? $"a patch of {Said.Whole(p.NewPixels)} new hot pixels has grown {p.Where}"
            : "";
        return $"The sensor has changed in {Years(years)}: "
            + $"{string.Join(", ", [.. parts, .. slow, .. patch.Length > 0 ? [patch] : Array.Empty<string>()])}"
            + (
                probes.FirstOrDefault(p => p.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both) is { } drifted
                    ? $"; the temperature probe's own drift of {Drift(drifted)} is taken out."
                    : "."
            );
    }

    /// <summary>The probe's verdict rules: the sensor is as it was.</summary>
    private static string ProbeOnly(ProbeOrAgeing drifted, double years) =>
        $"Keep the darks and set the cooler {ProbeTest.Setting(drifted.StepOfHotPixels!)}: the temperature probe has "
        + $"drifted by {Drift(drifted)} in {Years(years)}; the sensor itself shows no change beyond the errors.";

    private static string Drift(ProbeOrAgeing drifted) =>
        QuantityText.Of(drifted.StepOfHotPixels! with { Value = Math.Abs(drifted.StepOfHotPixels.Value) });

    private static bool SameThing(string a, string b) =>
        a == b
        || (a.StartsWith("darkRate", StringComparison.Ordinal) && b.StartsWith("darkRate", StringComparison.Ordinal))
        || (
            b.StartsWith("hotPixelsAbove", StringComparison.Ordinal)
            && (a == "newLessHealed" || a.StartsWith("hotPixelsAbove", StringComparison.Ordinal))
        );

    private static int Weight(string quantity) =>
        quantity switch
        {
            "darkRateByPixel" or "darkRate" => 0,
            "newLessHealed" => 1,
            "glowTotal" => 2,
            _ when quantity.StartsWith("hotPixelsAbove", StringComparison.Ordinal) => 3,
            "readNoise" or "rowNoise" or "columnNoise" => 4,
            "gain" or "fullWell" => 5,
            _ => 6,
        };

    private static string Part(DriftChange c)
    {
        if (c.Quantity == "newLessHealed")
            return $"{Said.Whole((long)c.To.Value)} new hot pixels against {Said.Whole((long)c.From.Value)} healed";
        double share = c.From.Value != 0 ? c.Change.Value / Math.Abs(c.From.Value) : 0;
        string by = Math.Abs(share) is > 0.001 and < 10 ? Said.Percent(Math.Abs(share)) : QuantityText.Of(c.Change);
        return $"{QuantityNames.WithArticle(c.Quantity)} is {(c.Change.Value > 0 ? "up" : "down")} by {by}";
    }

    private static string Unchanged(DriftChange[] changes, double years)
    {
        string seen = changes.FirstOrDefault(c => c.Quantity == "darkRate") is { From.Value: > 0 } dark
            ? $"; a change of the dark current by {Said.Percent(dark.Detectable / dark.From.Value)} would have been seen"
            : "";
        return $"No change beyond the errors in {Years(years)}{seen}.";
    }

    private static string Reason(
        DriftChange[] changes,
        DriftTrend[] trends,
        ProbeOrAgeing[] probes,
        DriftOptions options
    )
    {
        int tests = changes.Length + trends.Length,
            beyond = changes.Count(c => c.Changed) + trends.Count(t => t.Changed);
        string probe = string.Join(
            "",
            probes.Where(p => p.Verdict != ProbeVerdict.None).Select(p => " " + p.Sentence).Distinct()
        );
        return $"{(beyond == 0 ? "None" : Said.Whole(beyond))} of the {Said.Whole(tests)} "
            + $"values{(trends.Length > 0 ? " and yearly slopes" : "")} compared moved by more than their errors can "
            + "explain. "
            + "The bar is so high that a sensor in which nothing changed would show even one such move in at "
            + $"most {Said.Percent(options.Significance)} of reports like this one (rule of Holm).{probe}";
    }

    private static Finding PatchFinding(GrowingPatch patch) =>
        new(
            "growing-patch",
            Severity.Warning,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{patch.NewPixels} new hot pixels stand together {patch.Where} (centre {patch.X:F0}, {patch.Y:F0}, "
                    + $"radius {patch.Radius:F0} px) where chance would put {patch.Expected:F1}: watch it, and take new "
                    + $"darks so that they hold them."
            )
        );

    private static Dictionary<string, Measurement?> Quantities(ModeComparison[] modes)
    {
        Dictionary<string, Measurement?> all = [];
        ModeComparison first = modes[0];
        all["darkRateChange"] = first.Changes.FirstOrDefault(c => c.Quantity == "darkRate")?.Change;
        all["darkRatePerYear"] = first.Trends.FirstOrDefault(t => t.Quantity == "darkRate")?.PerYear;
        all["newHotPixelsPerYear"] = first.HotPixels?.NewPerYear;
        all["healedHotPixelsPerYear"] = first.HotPixels?.HealedPerYear;
        return all;
    }

    private static string Years(double years)
    {
        double days = years * TrendFit.DaysPerYear;
        string number = Said.Number(years, 2);
        return days < 1.5 ? "a day"
            : years < 0.25 ? $"{Said.Whole((long)Math.Round(days))} days"
            : number == "1" ? "1 year"
            : $"{number} years";
    }
}
