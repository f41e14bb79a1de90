namespace SensorProfile.Drift.OverTheYears;

/// <summary>The frames to retake that follow from a comparison.</summary>
internal static class FramesToRetake
{
    private static readonly string[] OfDarks =
    [
        "darkRateByPixel",
        "darkRate",
        "newLessHealed",
        "growingPatch",
        "glowTotal",
    ];
    private static readonly string[] OfBias = ["biasLevel", "rowNoise", "columnNoise"];
    private static readonly string[] OfFlats = ["responseNonuniformity"];

    /// <summary>The kinds of frames to take again.</summary>
    public static IReadOnlyList<RetakeKind> Choose(IReadOnlyList<DriftChange> changes, IReadOnlyList<DriftTrend> trends)
    {
        HashSet<string> moved =
        [
            .. changes.Where(c => c.Changed).Select(c => c.Quantity),
            .. trends.Where(t => t.Changed).Select(t => t.Quantity),
        ];
        List<RetakeKind> kinds = [];
        if (OfDarks.Any(moved.Contains) || moved.Any(q => q.StartsWith("hotPixelsAbove", StringComparison.Ordinal)))
            kinds.Add(RetakeKind.Darks);
        if (OfBias.Any(moved.Contains))
            kinds.Add(RetakeKind.BiasFrames);
        if (OfFlats.Any(q => moved.Any(m => m.StartsWith(q, StringComparison.Ordinal))))
            kinds.Add(RetakeKind.Flats);
        return kinds;
    }
}
