using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Turns a comparison into an answer.</summary>
internal static class DriftAnswers
{
    /// <summary>The answer when there is too little to compare.</summary>
    public static DriftAnswer CannotTell(
        DriftGap gap,
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> refused,
        List<Finding> findings
    ) =>
        new()
        {
            Outcome = DriftVerdict.CannotTell,
            Gap = gap,
            Compared = [.. kept.Select(p => p.File)],
            Refused = refused,
            Findings = findings,
        };

    /// <summary>The answer for two sensors under one name: nothing can be said about ageing.</summary>
    public static DriftAnswer AnotherSensor(
        IReadOnlyList<ProfileOnDisk> kept,
        IReadOnlyList<RejectedFile> others,
        IReadOnlyList<RejectedFile> refused,
        List<Finding> findings
    ) =>
        new()
        {
            Outcome = DriftVerdict.AnotherSensor,
            OtherSensors = others,
            Compared = [.. kept.Select(p => p.File)],
            Camera = kept[0].Profile.Camera.Name,
            Refused = refused,
            Findings = findings,
        };

    /// <summary>The answer from the modes that were compared.</summary>
    public static DriftAnswer Build(
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
        bool changed = changes.Any(c => c.Changed) || trends.Any(t => t.Changed),
            compared = changes.Length + trends.Length > 0;
        return new DriftAnswer
        {
            Outcome =
                !compared ? DriftVerdict.CannotTell
                : changed ? DriftVerdict.Changed
                : DriftVerdict.Unchanged,
            Gap = compared ? null : DriftGap.NoCommonQuantity,
            Years = TrendFit.Years(kept[0].DateUtc, kept[^1].DateUtc),
            Significance = options.Significance,
            Retake = FramesToRetake.Choose(changes, trends),
            Compared = [.. kept.Select(p => p.File)],
            Dates = [.. kept.Select(p => p.DateUtc)],
            Camera = kept[^1].Profile.Camera.Name,
            Refused = refused,
            Changes = changes,
            Trends = trends,
            HotPixelModes = [.. modes.Select(m => m.HotPixels).OfType<HotPixelDrift>()],
            Probes = probes,
            Library = library,
            Quantities = Quantities(modes),
            Findings = findings,
        };
    }

    private static Dictionary<string, Measurement?> Quantities(ModeComparison[] modes)
    {
        Dictionary<string, Measurement?> all = [];
        ModeComparison first = modes[0];
        all[QuantityNames.DarkRateChange] = first
            .Changes.FirstOrDefault(c => c.Quantity == QuantityNames.DarkRate)
            ?.Change;
        all[QuantityNames.DarkRatePerYear] = first
            .Trends.FirstOrDefault(t => t.Quantity == QuantityNames.DarkRate)
            ?.PerYear;
        all[QuantityNames.NewHotPixelsPerYear] = first.HotPixels?.NewPerYear;
        all[QuantityNames.HealedHotPixelsPerYear] = first.HotPixels?.HealedPerYear;
        return all;
    }
}
