using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>
/// Rise of a stack's noise against the number of darks in its master, with the rule of thumb of 20 darks drawn.
/// </summary>
internal static class DarkCountPlot
{
    /// <summary>The plot, or null without curves.</summary>
    /// <param name="stacks">One answer for each line.</param>
    /// <param name="names">Their names for the legend.</param>
    public static Panel? Draw(IReadOnlyList<DarkCountAnswer> stacks, IReadOnlyList<string> names) =>
        stacks.Count == 0
            ? null
            : FrameCountPlot.Draw(
                "darks",
                [RulesOfThumb.UsualDarks],
                100 * stacks[0].Loss,
                [
                    .. stacks.Select(
                        (stack, i) =>
                            new FrameCountCurve(
                                names[i],
                                [.. stack.Curve.Select(point => ((double)point.Darks, point.Loss))],
                                stack.Quantities.GetValueOrDefault(QuantityNames.Darks)?.Value
                            )
                    ),
                ]
            );
}
