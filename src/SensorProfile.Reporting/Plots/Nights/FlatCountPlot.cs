using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>
/// Rise of a stack's noise against the number of flats in its master, with the rule of thumb of 20 to 30 flats drawn.
/// </summary>
internal static class FlatCountPlot
{
    /// <summary>The plot, or null without curves.</summary>
    /// <param name="stacks">One answer for each line.</param>
    public static Panel? Draw(params IReadOnlyList<FlatPlanAnswer> stacks) =>
        stacks.Count == 0
            ? null
            : FrameCountPlot.Draw(
                "flats",
                [RulesOfThumb.UsualFlats.Low, RulesOfThumb.UsualFlats.High],
                100 * stacks[0].Limits.NoiseLoss,
                [
                    .. stacks.Select(stack => new FrameCountCurve(
                        Name(stack),
                        [.. stack.Curve.Select(point => ((double)point.Flats, point.Loss))],
                        stack.Verdict == FlatPlanVerdict.Answered ? stack.Flats : null
                    )),
                ]
            );

    private static string Name(FlatPlanAnswer stack) =>
        stack.Stack.DitherPositions > 1 ? $"{stack.Stack.DitherPositions} dither positions" : "not dithered";
}
