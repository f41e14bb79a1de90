using SensorProfile.Decisions.DarkMatch;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Cli.Replies;

/// <summary>The answer of <c>darks match</c> for lights and darks on disk.</summary>
internal static class MatchReply
{
    private const int MostPairs = 12;

    public static Reply Of(MatchAnswer answer, SkyRate? sky, IReadOnlyList<Finding> frameFindings)
    {
        Reply reply = DecisionReply.Of(
            "darks match",
            answer,
            JsonNodes.Field("matches", answer.Matches),
            JsonNodes.Field("pairs", answer.Pairs),
            JsonNodes.Field("sky", sky)
        );
        return reply with
        {
            Tables =
            [
                Matches(answer),
                .. Others(answer),
                .. sky is null ? Array.Empty<ReplyTable>() : [SkyFields.Assumptions([sky])],
            ],
            Findings = [.. answer.Findings.Concat(frameFindings).DistinctBy(finding => finding.Message)],
        };
    }

    private static ReplyTable Matches(MatchAnswer answer) =>
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

    /// <summary>Every light set against every dark set, where there is more than one to choose from.</summary>
    private static ReplyTable[] Others(MatchAnswer answer)
    {
        if (answer.Pairs.Count <= answer.Matches.Count)
            return [];
        if (answer.Pairs.Count > MostPairs)
            return
            [
                ReplyTable.List(
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
        match.Verdict.Replace('-', ' ') + (match.Scaled ? ", scaled" : "");

    private static string Loss(LightMatch match) => match.Loss is null ? "" : QuantityText.Of(match.Loss);
}
