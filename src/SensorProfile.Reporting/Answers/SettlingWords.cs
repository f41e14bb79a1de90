using SensorProfile.Decisions.Settling;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>Frames that would settle an answer, in words.</summary>
internal static class SettlingWords
{
    private const int Named = 3;

    /// <summary>One sentence: which frames, or why none.</summary>
    public static string Sentence(SettlingOutcome outcome, IReadOnlyList<SettlingFrames> frames) =>
        outcome switch
        {
            SettlingOutcome.MoreFrames =>
                $"{Phrase(frames)} more should settle it: characterise them together with the frames of the profile.",
            SettlingOutcome.SpreadOverPixels =>
                $"{Phrase(frames)} would show the spread: characterise again with them.",
            SettlingOutcome.TooManyFrames =>
                $"More frames cannot settle it in practice: even {Plain.Whole((long)SettlingSearch.MaxTimes)} times those of "
                    + "the profile would not be enough.",
            _ =>
                "More frames cannot settle it: what remains uncertain is the number of hot pixels, and this sensor has too "
                    + "few of them to count it better.",
        };

    /// <summary>"12 darks of 30, 100 and 300 s at 30 °C and 32 bias frames (30 min)".</summary>
    public static string Phrase(IReadOnlyList<SettlingFrames> frames)
    {
        var parts = frames
            .GroupBy(f => f.Kind)
            .Select(kind =>
                kind.Key switch
                {
                    FrameKind.Dark => Darks([.. kind]),
                    FrameKind.Bias => $"{Plain.Whole(kind.Sum(f => f.Frames))} bias frames",
                    FrameKind.Flat => $"{Plain.Whole(kind.Sum(f => f.Frames) / 2)} flat pairs",
                    _ => $"{Plain.Whole(kind.Sum(f => f.Frames))} lights",
                }
            );
        return $"{Joined([.. parts])} ({Plain.Duration(frames.Sum(f => f.Seconds))})";
    }

    private static string Darks(SettlingFrames[] darks)
    {
        double[] exposures = [.. darks.Select(d => d.Exposure).OfType<double>().Distinct().Order()],
            temperatures = [.. darks.Select(d => d.Temperature).OfType<double>().Distinct().Order()];
        string of =
            exposures.Length > Named
                ? $"{Plain.Number(exposures[0])} s to {Plain.Number(exposures[^1])} s"
                : $"{Joined([.. exposures.Select(t => Plain.Number(t))])} s";
        string at =
            temperatures.Length > Named
                ? $" at {Plain.Whole(temperatures.Length)} temperatures from {Plain.Celsius(temperatures[0])} to "
                    + $"{Plain.Celsius(temperatures[^1])}"
            : temperatures.Length == 0 ? ""
            : $" at {Joined([.. temperatures.Select(Plain.Celsius)])}";
        return $"{Plain.Whole(darks.Sum(d => d.Frames))} darks of {of}{at}";
    }

    private static string Joined(string[] parts) =>
        parts.Length < 2 ? string.Concat(parts) : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";
}
