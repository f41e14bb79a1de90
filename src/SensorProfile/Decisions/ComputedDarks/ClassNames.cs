using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>Classes of pixels in words, for findings, answers and the report.</summary>
internal static class ClassNames
{
    /// <summary>"ordinary pixels", "hot pixels of 10 to 100 times the noise of an ordinary pixel".</summary>
    public static string Of(PredictionClass known) =>
        known.Pixels switch
        {
            "hot" => Hot(known),
            "glow" => "pixels in the glow",
            "flickering" => "flickering pixels",
            _ => "ordinary pixels",
        };

    /// <summary>The sentence of a finding: of which pixels no uncertainty is claimed, and why.</summary>
    public static string Refusal(IReadOnlyList<(PredictionClass Class, long Pixels)> refused) =>
        $"No uncertainty is claimed for {string.Join("; for ", refused.Select(One))}: it is not a number there. "
        + "Let dithering and rejection take care of them, or take real darks.";

    private static string One((PredictionClass Class, long Pixels) refused) =>
        $"{Plain.Whole(refused.Pixels)} {Of(refused.Class)} ({Reason(refused.Class)})";

    /// <summary>Why nothing is claimed, in a few words.</summary>
    public static string Reason(PredictionClass known) =>
        known.Refused switch
        {
            ClassRefusal.TooFew => "too few in the darks that were left out",
            ClassRefusal.CommonError =>
                $"in left-out darks off together by {Plain.Percent(known.CommonShare)} of their signal",
            _ => "they change from set to set more than an interval can hold",
        };

    private static string Hot(PredictionClass known) =>
        (known.FromNoise, known.ToNoise) switch
        {
            (0, null) => "hot pixels",
            (0, double to) => $"hot pixels below {Times(to)}",
            (double from, null) => $"hot pixels beyond {Times(from)}",
            (double from, double to) => $"hot pixels of {Plain.Whole((long)from)} to {Times(to)}",
        };

    private static string Times(double noise) => $"{Plain.Whole((long)noise)} times the noise of an ordinary pixel";
}
