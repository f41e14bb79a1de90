using SensorProfile.Decisions.DarkMatch;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks match</c> for lights and darks on disk.</summary>
internal static class MatchDocument
{
    private const int MostPairs = 12;

    public static AnswerDocument Of(MatchAnswer answer, SkyRate? sky, IReadOnlyList<Finding> frameFindings)
    {
        AnswerDocument reply = DecisionDocument.Of(
            "darks match",
            answer,
            JsonNodes.Field("matches", answer.Matches),
            JsonNodes.Field("pairs", answer.Pairs),
            JsonNodes.Field("dithered", answer.Dithered is { } dithered ? dithered.Matches : null),
            JsonNodes.Field("sky", sky)
        );
        return reply with
        {
            Tables =
            [
                Matches(answer),
                .. Dithered(answer),
                .. Others(answer),
                .. sky is null ? Array.Empty<AnswerTable>() : [SkyFields.Assumptions([sky])],
            ],
            Findings = [.. answer.Findings.Concat(frameFindings).DistinctBy(finding => finding.Message)],
        };
    }

    private static AnswerTable Matches(MatchAnswer answer) =>
        new(
            "",
            ["lights", "darks", "verdict", ">loss", "reason"],
            [
                .. answer.Matches.Select(m =>
                    (IReadOnlyList<string>)
                        [
                            m.Lights,
                            m.Darks ?? "none",
                            Verdict(m),
                            Loss(m),
                            m.Reason != answer.Reason ? m.Reason
                            : answer.Matches.Count > 1 ? "As said above."
                            : "",
                        ]
                ),
            ]
        );

    /// <summary>What dithering and rejection would make of the same darks.</summary>
    private static AnswerTable[] Dithered(MatchAnswer answer) =>
        answer.Dithered is not { } dithered
            ? []
            :
            [
                new(
                    "With and without dithering",
                    ["lights", "not dithered", ">loss", "dithered, outliers rejected", ">loss"],
                    [
                        .. answer.Matches.Zip(dithered.Matches, (still, moved) =>
                            (IReadOnlyList<string>)
                                [still.Lights, Verdict(still), Loss(still), Verdict(moved), Loss(moved)]
                        ),
                    ]
                ),
            ];

    /// <summary>Every light set against every dark set, where there is more than one to choose from.</summary>
    private static AnswerTable[] Others(MatchAnswer answer)
    {
        if (answer.Pairs.Count <= answer.Matches.Count)
            return [];
        if (answer.Pairs.Count > MostPairs)
            return
            [
                AnswerTable.List(
                    "",
                    [
                        $"{QuantityText.Count(answer.Pairs.Count)} pairs of light set and dark set were judged; --json and "
                            + "--page list every one.",
                    ]
                ),
            ];
        return
        [
            new(
                "Every light set against every dark set",
                ["lights", "darks", "verdict", ">loss"],
                [.. answer.Pairs.Select(p => (IReadOnlyList<string>)[p.Lights, p.Darks ?? "none", Verdict(p), Loss(p)])]
            ),
        ];
    }

    private static string Verdict(LightMatch match) =>
        EnumWord.Spaced(match.Verdict) + (match.Scaled ? ", scaled" : "");

    private static string Loss(LightMatch match) => match.Loss is null ? "" : QuantityText.Of(match.Loss);
}
