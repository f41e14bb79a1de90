namespace SensorProfile.Fuzz.Targets;

/// <summary>Every reader that takes bytes from outside.</summary>
internal static class AllTargets
{
    private static readonly Dictionary<string, Func<Target>> makers = new()
    {
        ["FITS"] = FitsTargets.Plain,
        ["tile-compressed FITS"] = FitsTargets.Tiles,
        ["gzip"] = FitsTargets.Gzip,
        ["DNG and TIFF"] = RawTarget.Make,
        ["capture table"] = TextTargets.CaptureTables,
        ["thresholds"] = TextTargets.Thresholds,
        ["setup"] = TextTargets.Setups,
        ["nights"] = TextTargets.Nights,
        ["camera to simulate"] = TextTargets.Cameras,
        ["profile"] = TextTargets.Profiles,
        ["hot-pixel list"] = TextTargets.HotPixelLists,
    };

    /// <summary>Those that a run tries unless it is told which.</summary>
    public static IEnumerable<string> Names => makers.Keys;

    public static Target Make(string name) => name == "LibRaw" ? LibRawTarget.Make() : makers[name]();
}
