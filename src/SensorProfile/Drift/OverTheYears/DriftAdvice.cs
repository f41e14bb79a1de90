using System.Globalization;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>What follows from a comparison: which frames to retake.</summary>
internal static class DriftAdvice
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

    /// <summary>The kinds of frames to take again: darks, bias, flats.</summary>
    public static IReadOnlyList<string> Retake(IReadOnlyList<DriftChange> changes, IReadOnlyList<DriftTrend> trends)
    {
        HashSet<string> moved =
        [
            .. changes.Where(c => c.Changed).Select(c => c.Quantity),
            .. trends.Where(t => t.Changed).Select(t => t.Quantity),
        ];
        List<string> kinds = [];
        if (OfDarks.Any(moved.Contains) || moved.Any(q => q.StartsWith("hotPixelsAbove", StringComparison.Ordinal)))
            kinds.Add("darks");
        if (OfBias.Any(moved.Contains))
            kinds.Add("bias frames");
        if (OfFlats.Any(q => moved.Any(m => m.StartsWith(q, StringComparison.Ordinal))))
            kinds.Add("flats");
        return kinds;
    }

    /// <summary>The same in words, with the reason.</summary>
    public static string Sentence(
        DateTimeOffset first,
        IReadOnlyList<string> retake,
        bool changed,
        HotPixelDrift? hot,
        IReadOnlyList<ProbeOrAgeing> probes
    )
    {
        string since = first.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        ProbeOrAgeing? drifted = probes.FirstOrDefault(p => p.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both);
        if (drifted is { StepOfHotPixels: { } step } && !retake.Contains("darks"))
            return $"Keep the darks from {since}: set the cooler {ProbeTest.Setting(step)}, and the sensor is at the "
                + "temperature at which they were taken."
                + (retake.Count > 0 ? $" Retake the {Joined(retake)}." : "");
        string probe = drifted is { StepOfHotPixels: { } moved }
            ? " The temperature probe drifted (see below): at the same reading old darks were taken at another "
                + $"temperature of the sensor; a setting {ProbeTest.Setting(moved)} gives it back."
            : "";
        if (retake.Count > 0)
        {
            string why =
                retake[0] != "darks" ? ""
                : hot is { New: > 0 } h
                    ? $" Darks from {since} do not hold the {Said.Whole(h.New)} pixels that turned hot "
                        + $"since{(h.Patches.Count > 0 ? ", the patch among them" : "")}."
                : $" Darks from {since} hold another dark current.";
            string proof =
                retake[0] == "darks" ? " A check against 8 fresh darks says which masters still serve your stack." : "";
            return $"Retake the {Joined(retake)}.{why}{proof}{probe}";
        }
        return (
                changed
                    ? "Your darks may stay: what changed is not in them. Use the newest profile for gain and levels."
                    : $"Nothing to retake: as far as profiles can tell, darks from {since} still hold; a check against 8 "
                        + "fresh darks makes sure."
            ) + probe;
    }

    private static string Joined(IReadOnlyList<string> kinds) =>
        kinds.Count < 2 ? kinds[0] : $"{string.Join(", ", kinds.SkipLast(1))} and {kinds[^1]}";
}
