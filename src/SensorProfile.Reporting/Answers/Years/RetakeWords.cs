using System.Globalization;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>Which frames to retake after a comparison, in words.</summary>
internal static class RetakeWords
{
    /// <summary>What to retake, with the reason; empty where nothing was compared.</summary>
    public static string Phrase(DriftAnswer answer)
    {
        if (!answer.Answered)
            return "";
        IReadOnlyList<RetakeKind> retake = answer.Retake;
        HotPixelDrift? hot = answer.HotPixels;
        string since = answer.Dates[0].UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        ProbeOrAgeing? drifted = answer.Probes.FirstOrDefault(p =>
            p.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both
        );
        if (drifted is { StepOfHotPixels: { } step } && !retake.Contains(RetakeKind.Darks))
            return $"Keep the darks from {since}: set the cooler {ProbeWords.Setting(step)}, and the sensor is back at the "
                + "temperature at which they were taken."
                + (retake.Count > 0 ? $" Retake the {Joined(retake)}." : "");
        string probe = drifted is { StepOfHotPixels: { } moved }
            ? " The temperature probe drifted (see below): at the same reading the sensor was at another temperature when the "
                + $"old darks were taken; setting the cooler {ProbeWords.Setting(moved)} restores it."
            : "";
        if (retake.Count > 0)
        {
            string why =
                retake[0] != RetakeKind.Darks ? ""
                : hot is { New: > 0 } h
                    ? $" Darks from {since} do not contain the {Plain.Whole(h.New)} pixels that turned hot "
                        + $"since{(h.Patches.Count > 0 ? ", the patch among them" : "")}."
                : $" Darks from {since} contain another dark current.";
            string proof =
                retake[0] == RetakeKind.Darks
                    ? " A check against 8 fresh darks says which masters still serve your stack."
                    : "";
            return $"Retake the {Joined(retake)}.{why}{proof}{probe}";
        }
        if (!SawDarks(answer.Changes))
            return $"Cannot tell from these profiles whether darks from {since} still hold: neither dark current nor hot "
                + $"pixels were compared; a check against 8 fresh darks would tell.{probe}";
        return (
                answer.Outcome == DriftVerdict.Changed
                    ? "Keep your darks: what changed does not affect them. Use the newest profile for gain and levels."
                    : $"Nothing to retake: as far as profiles can tell, darks from {since} still hold; check against 8 "
                        + "fresh darks to be sure."
            ) + probe;
    }

    /// <summary>Whether any quantity that affects darks was compared.</summary>
    internal static bool SawDarks(IReadOnlyList<DriftChange> changes) =>
        changes.Any(c =>
            c.Quantity is QuantityNames.DarkRate or QuantityNames.DarkRateByPixel or QuantityNames.NewLessHealed
            || QuantityNames.IsHotPixelCount(c.Quantity)
        );

    /// <summary>"darks", "bias frames", "flats".</summary>
    public static string Word(RetakeKind kind) => EnumWord.Spaced(kind);

    private static string Joined(IReadOnlyList<RetakeKind> kinds) =>
        kinds.Count < 2 ? Word(kinds[0]) : $"{string.Join(", ", kinds.SkipLast(1).Select(Word))} and {Word(kinds[^1])}";
}
