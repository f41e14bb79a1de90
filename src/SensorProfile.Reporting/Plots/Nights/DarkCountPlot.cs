using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Decisions.DarkCount;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>
/// Rise of a stack's noise against the number of darks in its master, with the rule of thumb of 20 darks drawn.
/// </summary>
internal static class DarkCountPlot
{
    private const int RuleDarks = 20;
    private const double SmallestPercent = 0.1;

    /// <summary>The plot, or null without curves.</summary>
    /// <param name="stacks">One answer for each line.</param>
    /// <param name="names">Their names for the legend.</param>
    public static Panel? Of(IReadOnlyList<DarkCountAnswer> stacks, IReadOnlyList<string> names)
    {
        if (stacks.Count == 0 || stacks.All(stack => stack.Curve.Count == 0))
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            "Darks in the master",
            Span.Of(stacks.SelectMany(stack => stack.Curve).Select(point => (double)point.Darks))
        );
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Noise of the stack raised by, %",
            Span.OfPositive(
                    stacks
                        .SelectMany(stack => stack.Curve)
                        .Select(point => point.Loss)
                        .Where(loss => loss > SmallestPercent)
                )
                .Including(100 * stacks[0].Loss)
        );
        PlotMarks.AddLevel(
            model,
            100 * stacks[0].Loss,
            $"accepted: {QuantityText.Number(100 * stacks[0].Loss, 3)} %",
            labelAtRight: false
        );
        PlotMarks.AddValue(model, RuleDarks, "rule of thumb: 20 darks", Palette.Faint, LineStyle.Dash);
        for (int i = 0; i < stacks.Count; i++)
        {
            DarkCountAnswer stack = stacks[i];
            PlotBase.AddLine(
                model,
                names[i],
                Palette.Series(i),
                LineStyle.Solid,
                stack
                    .Curve.Where(point => point.Loss > SmallestPercent)
                    .Select(point => new DataPoint(point.Darks, point.Loss)),
                1.4
            );
            if (stack.Quantities.GetValueOrDefault("darks") is { } darks)
                PlotBase.AddPoints(
                    model,
                    new PointStyle(null, Palette.Series(i), Palette.Marker(i), Scale: 1.3),
                    [new BarPoint(darks.Value, 100 * stack.Loss, 0)]
                );
        }
        return new Panel(model, 0.45);
    }
}
