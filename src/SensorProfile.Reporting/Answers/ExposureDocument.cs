using SensorProfile.Decisions.Exposure;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Answers;

/// <summary>The answer of <c>exposure</c>.</summary>
internal static class ExposureDocument
{
    public static AnswerDocument Of(GainChoiceAnswer answer)
    {
        GainChoiceAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerDocument reply = DecisionDocument.Of(
            "exposure",
            answer,
            JsonNodes.Field("advised", answer.Advised),
            JsonNodes.Field("sky", answer.Sky),
            JsonNodes.Field(
                "skies",
                all.Select(a => new
                {
                    a.Sky.Name,
                    a.Sky.Rate,
                    a.Sky.Assumptions,
                    a.Sentence,
                    a.Verdict,
                    a.Quantities,
                    a.Advised,
                    a.Modes,
                })
            ),
            JsonNodes.Field("modes", answer.Modes)
        );
        return reply with
        {
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
                            QuantityText.Of(row.ExposureNeeded),
                            QuantityText.Of(row.LongestExposure),
                            QuantityText.Number(100 * row.ReadNoiseShare, 2) + " %",
                            answer.Modes.Count > 1 && row.Settings == answer.Advised ? "advised" : "",
                        ]
                ),
            ]
        );
}
