using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The number of darks in words.</summary>
internal static class DarkCountWords
{
    public static AnswerWords Phrase(DarkCountAnswer answer)
    {
        double seconds = answer.Stack.ExposureSeconds;
        return new AnswerWords(
            $"Take {Plain.Whole(answer.Darks)} darks of {Plain.Seconds(seconds)} ({Plain.Duration(answer.Darks * seconds)}): "
                + (
                    answer.FewestForHits
                        ? "the fewest that can show up a cosmic-ray hit."
                        : $"fewer would cost this stack more than {Plain.Percent(answer.Loss)}."
                ),
            $"One dark has {Plain.Percent(answer.NoiseRatio)} of the noise of one light, and the master's noise enters all "
                + $"{Plain.Whole(answer.Stack.Lights)} lights"
                + (
                    answer.Stack.DitherPositions > 1
                        ? $", spread by dithering over {Plain.Whole(answer.Stack.DitherPositions)} positions."
                        : " at the same place; dithering would need fewer darks."
                ),
            Verdict.Answered
        );
    }

    /// <summary>The answer as a member of "stacks".</summary>
    public static StackMember Member(DarkCountAnswer answer)
    {
        AnswerWords words = Phrase(answer);
        return new(
            answer.Stack,
            answer.Sky,
            answer.Loss,
            answer.Curve,
            words.Sentence,
            words.Reason,
            words.Word,
            words.Cautions,
            answer.Quantities,
            answer.Intervals,
            answer.Settling,
            answer.Findings,
            answer.RulesOfThumb
        );
    }
}

/// <summary>The number of darks that one stack needs.</summary>
internal sealed record StackMember(
    StackConditions Stack,
    SkyRate Sky,
    double Loss,
    IReadOnlyList<DarkCountPoint> Curve,
    string Sentence,
    string Reason,
    string Verdict,
    IReadOnlyList<string> Cautions,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    IReadOnlyDictionary<string, Interval> Intervals,
    IReadOnlyList<SettlingFrames> Settling,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<string> RulesOfThumb
);
