using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks match</c> for a camera: how far off the darks may be.</summary>
internal static class ToleranceDocument
{
    private const string NoLimit = "no limit";

    /// <summary>The answer that terminal, JSON and page all show.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="findings">Further findings.</param>
    public static AnswerDocument Compose(ToleranceAnswer answer, params IEnumerable<Finding> findings)
    {
        ToleranceAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerDocument reply = DecisionDocument.Compose(
            "darks match",
            answer,
            ToleranceWords.Phrase(answer),
            new ToleranceFields(
                answer.BindingCause,
                answer.Sky,
                [.. all.Select(a => SkyFields.Member(a.Sky, a, ToleranceWords.Phrase(a)))],
                answer.Stack,
                answer.Dithered is { } dithered ? Member(dithered) : null,
                answer.BeyondCoolers,
                [.. answer.Causes.Select(cause => Member(answer, cause))],
                answer.Curve
            )
        );
        return reply with
        {
            Figure = () => ToleranceBlocks.Figure(new FigureCounter(), "dark-tolerance.csv", (answer, "")),
            Findings = [.. reply.Findings, .. ToleranceWords.Findings(answer), .. findings],
            QuantitiesTitle =
                all.Length > 1 ? $"For the {answer.Sky.Name}"
                : answer.Sky == NamedSkies.Default ? $"For a {answer.Sky.Name}, {SkyFields.Rate(answer.Sky)} (assumed)"
                : "",
            Tables =
            [
                .. all.Length > 1
                    ?
                    [
                        SkyFields.SideBySide(
                            [.. all.Select(a => (a.Sky, (Answer)a))],
                            [
                                (QuantityNames.ToleranceWarmer, "warmer by"),
                                (QuantityNames.ToleranceColder, "colder by"),
                                (QuantityNames.ToleranceExposure, "exposure by"),
                            ],
                            NoLimit
                        ),
                    ]
                    : Array.Empty<AnswerTable>(),
                .. Stacks(answer),
                Causes(answer),
                SkyFields.Assumptions(all.Select(a => a.Sky)),
            ],
        };
    }

    private static DitheredTolerance Member(ToleranceAnswer dithered) =>
        new(
            dithered.Stack.DitherPositions,
            dithered.Stack.Rejection,
            ToleranceWords.Phrase(dithered).Sentence,
            dithered.BindingCause,
            dithered.Quantities,
            dithered.Intervals
        );

    private static CauseMember Member(ToleranceAnswer answer, CauseTolerance cause) =>
        new(
            cause.Cause,
            ToleranceWords.Threshold(cause.Cause, answer.Limits),
            cause.Warmer,
            cause.Colder,
            cause.Exposure,
            cause.Known
        );

    /// <summary>The tolerance of the stack as it is, and with dithering.</summary>
    private static AnswerTable[] Stacks(ToleranceAnswer answer) =>
        answer.Dithered is not { } dithered
            ? []
            :
            [
                new AnswerTable(
                    "With and without dithering",
                    ["stack", ">warmer by", ">colder by", ">exposure by", "what sets it"],
                    [
                        Row("not dithered", answer),
                        Row(
                            $"{QuantityText.Count(dithered.Stack.DitherPositions)} positions, outliers rejected",
                            dithered
                        ),
                    ]
                ),
            ];

    private static readonly string[] _sides =
    [
        QuantityNames.ToleranceWarmer,
        QuantityNames.ToleranceColder,
        QuantityNames.ToleranceExposure,
    ];

    private static IReadOnlyList<string> Row(string name, ToleranceAnswer answer) =>
        [
            name,
            .. _sides.Select(quantity =>
                answer.Quantities.GetValueOrDefault(quantity) is { } value ? QuantityText.Of(value) : NoLimit
            ),
            answer.BindingCause is { } cause ? EnumWord.Spaced(cause) : "nothing",
        ];

    private static AnswerTable Causes(ToleranceAnswer answer) =>
        new(
            $"What each cause alone allows ({answer.Sky.Name})",
            ["cause", ">warmer by", ">colder by", ">exposure by", "limit"],
            [
                .. answer.Causes.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            EnumWord.Spaced(c.Cause),
                            Cell(c, c.Warmer),
                            Cell(c, c.Colder),
                            Cell(c, c.Exposure),
                            ToleranceWords.Threshold(c.Cause, answer.Limits),
                        ]
                ),
            ]
        );

    private static string Cell(CauseTolerance cause, Measurement? value) =>
        !cause.Known ? "not known"
        : value is null ? NoLimit
        : QuantityText.Of(value);
}

/// <summary>Fields that <c>darks match</c> adds to the JSON document for a camera.</summary>
internal sealed record ToleranceFields(
    BindingCause? BindingCause,
    SkyRate Sky,
    IReadOnlyList<SkyMember> Skies,
    StackConditions Stack,
    DitheredTolerance? Dithered,
    bool BeyondCoolers,
    IReadOnlyList<CauseMember> Causes,
    IReadOnlyList<TolerancePoint> Curve
);

/// <summary>The same question for a dithered stack.</summary>
internal sealed record DitheredTolerance(
    int DitherPositions,
    Rejection Rejection,
    string Sentence,
    BindingCause? BindingCause,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    IReadOnlyDictionary<string, Interval> Intervals
);

/// <summary>What one cause alone allows.</summary>
internal sealed record CauseMember(
    BindingCause Cause,
    string Threshold,
    Measurement? Warmer,
    Measurement? Colder,
    Measurement? Exposure,
    bool Known
);
