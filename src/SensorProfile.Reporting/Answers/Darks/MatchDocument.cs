using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks match</c> for lights and darks on disk.</summary>
internal static class MatchDocument
{
    private const int MaxPairs = 12;

    public static AnswerShape Shape { get; } =
        AnswerShape.Of<MatchVerdict>("darks match", typeof(MatchFields)).Or<ToleranceVerdict>(typeof(ToleranceFields));

    public static AnswerDocument Compose(MatchAnswer answer, SkyRate? sky, IReadOnlyList<Finding> frameFindings)
    {
        AnswerDocument reply = DecisionDocument.Compose(
            "darks match",
            answer,
            MatchWords.Phrase(answer),
            new MatchFields(
                [.. answer.Matches.Select(Member)],
                [.. answer.Pairs.Select(Member)],
                answer.Dithered?.Matches.Select(Member).ToArray(),
                sky
            )
        );
        return reply with
        {
            Tables =
            [
                Matches(answer, reply.Reason),
                .. Dithered(answer),
                .. Others(answer),
                .. sky is null ? Array.Empty<AnswerTable>() : [SkyFields.Assumptions([sky])],
            ],
            Findings =
            [
                .. answer
                    .Findings.Concat(MatchWords.Findings(answer))
                    .Concat(frameFindings)
                    .DistinctBy(finding => finding.Message),
            ],
        };
    }

    private static MatchMember Member(LightMatch match) =>
        new(
            MatchWords.Set(match.Lights),
            match.Darks is { } darks ? MatchWords.Set(darks) : null,
            match.Verdict,
            match.Loss,
            match.BindingCause,
            match.Scaled,
            match.FullPixels,
            MatchWords.Reason(match),
            match.Settling,
            match.Night,
            match.TemperatureDifference,
            match.SetPoint,
            match.Drift
        );

    private static AnswerTable Matches(MatchAnswer answer, string reason) =>
        new(
            "",
            ["lights", "darks", "verdict", ">loss", "reason"],
            [
                .. answer.Matches.Select(m =>
                    (IReadOnlyList<string>)
                        [
                            MatchWords.Set(m.Lights),
                            MatchWords.Darks(m),
                            Verdict(m),
                            Loss(m),
                            MatchWords.Reason(m) is var why && why != reason ? why
                            : answer.Matches.Count > 1 ? "As said above."
                            : "",
                        ]
                ),
            ]
        );

    /// <summary>The same darks without dithering, and with dithering and rejection.</summary>
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
                                [MatchWords.Set(still.Lights), Verdict(still), Loss(still), Verdict(moved), Loss(moved)]
                        ),
                    ]
                ),
            ];

    /// <summary>Every light set against every dark set, where there is more than one to choose from.</summary>
    private static AnswerTable[] Others(MatchAnswer answer)
    {
        if (answer.Pairs.Count <= answer.Matches.Count)
            return [];
        if (answer.Pairs.Count > MaxPairs)
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
                [
                    .. answer.Pairs.Select(p =>
                        (IReadOnlyList<string>)[MatchWords.Set(p.Lights), MatchWords.Darks(p), Verdict(p), Loss(p)]
                    ),
                ]
            ),
        ];
    }

    private static string Verdict(LightMatch match) =>
        EnumWord.Spaced(match.Verdict) + (match.Scaled ? ", scaled" : "");

    private static string Loss(LightMatch match) => match.Loss is null ? "" : QuantityText.Of(match.Loss);
}

/// <summary>Fields that <c>darks match</c> adds to the JSON document for lights and darks on disk.</summary>
internal sealed record MatchFields(
    IReadOnlyList<MatchMember> Matches,
    IReadOnlyList<MatchMember> Pairs,
    IReadOnlyList<MatchMember>? Dithered,
    SkyRate? Sky
);

/// <summary>Lights and the darks that serve them.</summary>
internal sealed record MatchMember(
    string Lights,
    string? Darks,
    MatchVerdict Verdict,
    Measurement? Loss,
    BindingCause? BindingCause,
    bool Scaled,
    Measurement? FullPixels,
    string Reason,
    IReadOnlyList<SettlingFrames> Settling,
    LightNight? Night,
    double? TemperatureDifference,
    double? SetPoint,
    double? Drift
);
