using SensorProfile.Decisions.Exposure;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>The answer on exposure and gain setting in words.</summary>
internal static class ExposureWords
{
    private const double LongestInSeconds = 7200;

    internal static AnswerWords Phrase(GainChoiceAnswer answer) =>
        new(Sentence(answer), Reason(answer), answer.Verdict);

    /// <summary>"Expose at least 31 s under a dark sky, broad band; 4.9 s under …".</summary>
    internal static string SideBySide(IReadOnlyList<GainChoiceAnswer> answers) =>
        "Expose at least "
        + string.Join(
            "; ",
            answers.Select(a =>
                $"{Shortest(a)}{(a.Modes.Count > 1 ? $" at {ModeChoice.Name(a.Advised)}" : "")} under a {a.Sky.Name}"
            )
        )
        + ".";

    private static string Sentence(GainChoiceAnswer answer)
    {
        GainRow advised = answer.AdvisedRow;
        string use = answer.Modes.Count > 1 ? $"Use {ModeChoice.Name(advised.Settings)} and expose" : "Expose",
            noise = Plain.Percent(answer.Loss),
            asked = Time(answer.ExposureSeconds),
            share = Plain.Percent(advised.ReadNoiseShare);
        if (answer.Verdict != ExposureVerdict.LongEnough && FullBefore(answer) is double full)
            return $"{use} as long as mount and bright stars allow: read noise adds more than {noise} to the noise of any "
                + $"light that leaves {Plain.Percent(1 - answer.Fill)} of the well free, up to {Time(full)}.";
        return answer.Verdict switch
        {
            ExposureVerdict.Answered =>
                $"{use} at least {Shortest(answer)}: read noise then adds no more than {noise} to the noise of "
                    + "a light.",
            ExposureVerdict.LongEnough =>
                $"{use} {asked}: long enough, read noise adds {share} to the noise of a light; {Shortest(answer)} "
                    + "would do.",
            _ => $"{use} longer than {asked}, at least {Shortest(answer)}: at {asked} read noise adds {share} to the "
                + $"noise of a light, more than {noise}.",
        };
    }

    private static string Reason(GainChoiceAnswer answer)
    {
        GainRow advised = answer.AdvisedRow,
            largest = answer.Modes[0];
        string choice =
            answer.Modes.Count < 2 ? ""
            : advised == largest ? $"The sky drowns its read noise from {Time(largest.ExposureNeeded.Value)} on. "
            : $"{ModeChoice.Name(largest.Settings)} holds more light, but needs exposures of "
                + $"{Time(largest.ExposureNeeded.Value)} or more under this sky. ";
        string well = advised.LongestExposure is { } longest
            ? $"; sky and dark current fill {Plain.Percent(answer.Fill)} of the well"
                + (advised.FillsHottest ? " of the hottest 0.1 % of the pixels" : "")
                + $" after {Plain.Duration(longest.Value)}, bright stars much sooner."
            : ".";
        string dark = advised.DarkRate is { Value: > 0 } rate ? $" and a dark current of {QuantityText.Of(rate)}" : "";
        return $"{choice}Read noise of {QuantityText.Of(advised.ReadNoise)} stands against "
            + $"{SkyFields.Named(answer.Sky)}{dark}{well}";
    }

    // Do not advise what cannot be done: sky and dark current would fill the well before the sky drowns the read noise.
    private static double? FullBefore(GainChoiceAnswer answer) =>
        answer.AdvisedRow.LongestExposure is { } longest && longest.Value < answer.ShortestUseful
            ? longest.Value
            : null;

    private static string Shortest(GainChoiceAnswer answer) => Time(answer.ShortestUseful);

    private static string Time(double seconds) =>
        seconds > LongestInSeconds ? Plain.Duration(seconds) : Plain.Seconds(seconds);
}
