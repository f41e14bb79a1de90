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
        FlatCountPlot.Draw(stacks) is not { } panel
            ? null
            : new FigureBlock(
                figures.Next(),
                $"What the master flat costs a stack of {stacks[0].Stack.Lights} lights of "
                    + $"{QuantityText.Number(stacks[0].Stack.ExposureSeconds)} s under {DecisionText.Under(stacks[0].Sky)}, "
                    + $"against the number of flats at {FlatPlanWords.At(stacks[0].Level)}. The marks show the fewest "
                    + "flats that stay within the accepted loss; the rule of thumb of 20 to 30 (common practice, no source) "
                    + "is dashed.",
                [panel]
            )
            {
                Table = table,
            };

    /// <summary>Level by level.</summary>
    public static TableBlock Levels(FlatPlanAnswer answer) =>
        TableBlock.Of(FlatPlanDocument.Levels(answer), 0.2, 0.2, 0.18, 0.28, 0.14);
}
