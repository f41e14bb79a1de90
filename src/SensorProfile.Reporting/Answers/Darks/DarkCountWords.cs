using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The number of darks in words.</summary>
internal static class DarkCountWords
{
    public static AnswerWords Of(DarkCountAnswer answer)
    {
        double seconds = answer.Stack.ExposureSeconds;
        return new AnswerWords(
            $"Take {PlainNumber.Whole(answer.Darks)} darks of {PlainNumber.Seconds(seconds)} ({PlainNumber.Duration(answer.Darks * seconds)}): "
                + (
                    answer.FewestForHits
                        ? "the fewest that can tell a cosmic-ray hit."
                        : $"fewer would cost this stack more than {PlainNumber.Percent(answer.Loss)}."
                ),
            $"One dark has {PlainNumber.Percent(answer.NoiseRatio)} of the noise of one light, and the master's noise is in all "
                + $"{PlainNumber.Whole(answer.Stack.Lights)} lights"
                + (
                    answer.Stack.DitherPositions > 1
                        ? $", moved to {PlainNumber.Whole(answer.Stack.DitherPositions)} positions."
                        : " at the same place; dithering would need fewer darks."
                ),
            "answered"
        );
    }

    /// <summary>The answer as a member of "stacks".</summary>
    public static object Member(DarkCountAnswer answer)
    {
        AnswerWords words = Of(answer);
        return new
        {
            answer.Stack,
            answer.Sky,
            answer.Loss,
            answer.Curve,
            words.Sentence,
            words.Reason,
            words.Verdict,
            words.Cautions,
            answer.Quantities,
            answer.Intervals,
            answer.Settling,
            answer.Findings,
            answer.RulesOfThumb,
        };
    }
}
