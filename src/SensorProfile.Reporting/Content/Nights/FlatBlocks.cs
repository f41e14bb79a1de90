using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>How many flats, at which level: the curves, the levels.</summary>
internal static class FlatBlocks
{
    /// <summary>Cost against the number of flats.</summary>
    public static FigureBlock? Figure(
        FigureCounter figures,
        string? table,
        params IReadOnlyList<FlatPlanAnswer> stacks
    ) =>
        FlatCountPlot.Of(stacks) is not { } panel
            ? null
            : new FigureBlock(
                figures.Next(),
                $"What the master flat costs a stack of {stacks[0].Stack.Lights} lights of "
                    + $"{QuantityText.Number(stacks[0].Stack.ExposureSeconds)} s under {DecisionText.Under(stacks[0].Sky)}, "
                    + $"against the number of flats at {FlatPlanWords.At(stacks[0].Level)}. The marks stand at the fewest "
                    + "flats that stay within the accepted loss; the rule of thumb of 20 to 30 (common practice, no source) "
                    + "is dashed.",
                [panel]
            )
            {
                Table = table,
            };

    /// <summary>Level by level.</summary>
    public static TableBlock Levels(FlatPlanAnswer answer) =>
        new(
            ["Mean level, of full well", "ADU", "Flats", "Gradient by the bend, noise of the stack", ""],
            [
                .. answer.Levels.Select(l =>
                    (IReadOnlyList<string>)
                        [
                            l.Share is double share ? $"{QuantityText.Number(100 * share, 3)} %" : "–",
                            l.Adu is double adu ? QuantityText.Count((long)Math.Round(adu)) : "–",
                            l.Flats is int n ? QuantityText.Count(n) : "none is enough",
                            l.Bend is double bend ? QuantityText.Number(bend, 2) : "–",
                            FlatPlanDocument.Word(answer, l),
                        ]
                ),
            ],
            [0.22, 0.18, 0.18, 0.28, 0.14]
        )
        {
            FirstNumberColumn = 0,
            LastNumberColumn = 3,
        };
}
