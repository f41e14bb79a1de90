using SensorProfile.Decisions.Exposure;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>The answer of <c>exposure</c>.</summary>
internal static class ExposureDocument
{
    /// <summary>Terminal, JSON and page all take the answer from here.</summary>
    public static AnswerDocument Of(GainChoiceAnswer answer) => Of(answer, [AnswerAssumption.Sky(answer.Sky)]);

    /// <inheritdoc cref="Of(GainChoiceAnswer)"/>
    public static AnswerDocument Of(GainChoiceAnswer answer, IReadOnlyList<AnswerAssumption> assumptions)
    {
        GainChoiceAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerWords words = ExposureWords.Of(answer);
        AnswerDocument reply = DecisionDocument.Of(
            "exposure",
            answer,
            all.Length > 1 ? words with { Sentence = ExposureWords.SideBySide(all) } : words,
            JsonNodes.Field("advised", answer.Advised),
            JsonNodes.Field("sky", answer.Sky),
            JsonNodes.Field(
                "skies",
                all.Select(a => new
                {
                    a.Sky.Name,
                    a.Sky.Rate,
                    a.Sky.Assumptions,
                    ExposureWords.Of(a).Sentence,
                    ExposureWords.Of(a).Verdict,
                    a.Quantities,
                    a.Advised,
                    a.Modes,
                })
            ),
            JsonNodes.Field("modes", answer.Modes)
        );
        return reply with
        {
            Assumptions = assumptions,
            Hints = assumptions.Any(a => a is { Name: "sky", Source: AssumptionSource.Default })
                ? [AnswerHint.GiveSky]
                : [],
            QuantitiesTitle = all.Length > 1 ? $"For the {answer.Sky.Name}" : "",
            Quantities = [.. reply.Quantities.Where(q => q.Name != "exposureNeeded" || answer.Modes.Count > 1)],
            Tables = [.. all.Select(Modes), SkyFields.Assumptions(all.Select(a => a.Sky))],
        };
    }

    private static AnswerTable Modes(GainChoiceAnswer answer) =>
        new(
            $"Setting by setting, under {answer.Sky.Name} of {SkyFields.Rate(answer.Sky)}",
            [
                "setting",
                ">read noise",
                ">full well",
                ">range",
                ">shortest",
                ">well filled after",
                $">read noise adds at {QuantityText.Number(answer.ExposureSeconds)} s",
                "",
            ],
            [
                .. answer.Modes.Select(row =>
                    (IReadOnlyList<string>)
                        [
                            ModeLabel.Text(row.Settings),
                            QuantityText.Of(row.ReadNoise),
                            QuantityText.Of(row.FullWell),
                            QuantityText.Of(row.DynamicRange),
                            ReadableTime.Text(row.ExposureNeeded),
                            ReadableTime.Text(row.LongestExposure),
                            QuantityText.Number(100 * row.ReadNoiseShare, 2) + " %",
                            answer.Modes.Count > 1 && row.Settings == answer.Advised ? "advised" : "",
                        ]
                ),
            ]
        );
}
