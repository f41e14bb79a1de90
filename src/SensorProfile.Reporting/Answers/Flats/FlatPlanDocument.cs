using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Answers.Flats;

/// <summary>The answer of <c>flats plan</c>.</summary>
internal static class FlatPlanDocument
{
    public static AnswerShape Shape { get; } = AnswerShape.Of<FlatPlanVerdict>("flats plan", typeof(FlatPlanFields));

    /// <summary>The answer that terminal, JSON and page all show.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="csv">File that its levels were written to; null for none.</param>
    /// <param name="findings">Further findings.</param>
    public static AnswerDocument Compose(
        FlatPlanAnswer answer,
        string? csv = null,
        params IEnumerable<Finding> findings
    )
    {
        AnswerDocument reply = DecisionDocument.Compose(
            "flats plan",
            answer,
            FlatPlanWords.Phrase(answer),
            new FlatPlanFields(
                answer.Level,
                answer.LevelLimit,
                answer.Levels,
                answer.Sky,
                answer.Stack,
                answer.Dithered is { } dithered ? Member(dithered) : null,
                answer.Curve
            )
        );
        FlatPlanAnswer[] stacks = answer.Dithered is { } other ? [answer, other] : [answer];
        return reply with
        {
            Figure = () => FlatBlocks.Figure(new FigureCounter(), null, stacks),
            Quantities = [.. reply.Quantities.Select(q => q with { Absent = QuantityText.NotMeasured })],
            Findings = [.. reply.Findings, .. findings],
            Tables = [Levels(answer), .. Stacks(answer), SkyFields.Assumptions([answer.Sky])],
            Lines = csv is null ? [] : [$"The levels as a table: {csv}"],
        };
    }

    private static DitheredFlats Member(FlatPlanAnswer dithered) =>
        new(
            dithered.Stack.DitherPositions,
            FlatPlanWords.Phrase(dithered).Sentence,
            dithered.Verdict,
            dithered.Quantities,
            dithered.Intervals
        );

    internal static AnswerTable Levels(FlatPlanAnswer answer) =>
        new(
            "Level by level",
            [">of full well", ">mean level", ">flats", ">gradient from nonlinearity", ""],
            [
                .. answer.Levels.Select(l =>
                    (IReadOnlyList<string>)
                        [
                            l.Share is double share ? $"{QuantityText.Number(100 * share, 3)} %" : "",
                            l.Adu is double adu ? $"{QuantityText.Count((long)Math.Round(adu))} ADU" : "",
                            l.Flats is int n ? QuantityText.Count(n) : "none",
                            l.Bend is double bend ? QuantityText.Number(bend, 2) : "",
                            Word(answer, l),
                        ]
                ),
            ]
        );

    /// <summary>"taken", "too bright", "bent", or empty.</summary>
    internal static string Word(FlatPlanAnswer answer, FlatLevel level) =>
        level == answer.Level ? "taken"
        : !level.Unsaturated ? "too bright"
        : !level.Straight ? "bent"
        : "";

    private static IEnumerable<AnswerTable> Stacks(FlatPlanAnswer answer)
    {
        if (answer.Dithered is { } dithered)
            yield return new AnswerTable(
                "With and without dithering",
                ["stack", ">flats", ">cost of 20 flats"],
                [
                    Row("not dithered", answer),
                    Row($"{QuantityText.Count(dithered.Stack.DitherPositions)} positions", dithered),
                ]
            );
    }

    private static IReadOnlyList<string> Row(string name, FlatPlanAnswer answer) =>
        [
            name,
            answer.Verdict == FlatPlanVerdict.Limited ? "none is enough" : QuantityText.Count(answer.Flats),
            $"{QuantityText.Number(answer.Quantities[QuantityNames.LossAt20Flats]?.Value ?? 0, 2)} %",
        ];
}

/// <summary>Fields that only <c>flats plan</c> adds to the JSON document.</summary>
internal sealed record FlatPlanFields(
    FlatLevel Level,
    FlatLevelLimit LevelLimit,
    IReadOnlyList<FlatLevel> Levels,
    SkyRate Sky,
    StackConditions Stack,
    DitheredFlats? Dithered,
    IReadOnlyList<FlatPlanPoint> Curve
);

/// <summary>The same question for a dithered stack.</summary>
internal sealed record DitheredFlats(
    int DitherPositions,
    string Sentence,
    FlatPlanVerdict Verdict,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    IReadOnlyDictionary<string, Interval> Intervals
);
