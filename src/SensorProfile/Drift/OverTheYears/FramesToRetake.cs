namespace SensorProfile.Drift.OverTheYears;

/// <summary>The frames to retake that follow from a comparison.</summary>
internal static class FramesToRetake
{
    private static readonly string[] OfDarks =
    [
        QuantityNames.DarkRateByPixel,
        QuantityNames.DarkRate,
        QuantityNames.NewLessHealed,
        QuantityNames.GrowingPatch,
        QuantityNames.GlowTotal,
    ];
    private static readonly string[] OfBias =
    [
        QuantityNames.BiasLevel,
        QuantityNames.RowNoise,
        QuantityNames.ColumnNoise,
    ];
    private static readonly string[] OfFlats = [QuantityNames.ResponseNonuniformity];

    /// <summary>The kinds of frames to take again.</summary>
    public static IReadOnlyList<RetakeKind> Choose(IReadOnlyList<DriftChange> changes, IReadOnlyList<DriftTrend> trends)
    {
        HashSet<string> moved =
        [
            .. changes.Where(c => c.Changed).Select(c => c.Quantity),
            .. trends.Where(t => t.Changed).Select(t => t.Quantity),
        ];
        List<RetakeKind> kinds = [];
        if (OfDarks.Any(moved.Contains) || moved.Any(QuantityNames.IsHotPixelCount))
            kinds.Add(RetakeKind.Darks);
        if (OfBias.Any(moved.Contains))
            kinds.Add(RetakeKind.BiasFrames);
        if (OfFlats.Any(q => moved.Any(m => m.StartsWith(q, StringComparison.Ordinal))))
            kinds.Add(RetakeKind.Flats);
        return kinds;
    }
}
