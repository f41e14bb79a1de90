using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>One stack in a <see cref="FrameCountPlot"/>.</summary>
/// <param name="Name">For the legend.</param>
/// <param name="Points">Frames in the master, and the rise of the stack's noise, %.</param>
/// <param name="Advised">Frames that are advised; null for none.</param>
internal sealed record FrameCountCurve(
    string Name,
    IReadOnlyList<(double Frames, double Loss)> Points,
    double? Advised
);

/// <summary>
/// Rise of a stack's noise against the number of frames in a master, with the rules of thumb drawn.
/// </summary>
internal static class FrameCountPlot
{
    private const double SmallestPercent = 0.1;

    /// <summary>The plot, or null without curves.</summary>
    /// <param name="kind">"darks".</param>
    /// <param name="rules">Numbers of frames that rules of thumb recommend.</param>
    /// <param name="accepted">Accepted rise of the noise, %.</param>
    /// <param name="curves">One for each line.</param>
    public static Panel? Draw(
        string kind,
        IReadOnlyList<int> rules,
        double accepted,
        IReadOnlyList<FrameCountCurve> curves
    )
    {
        if (curves.All(curve => curve.Points.Count == 0))
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            $"{char.ToUpperInvariant(kind[0])}{kind[1..]} in the master",
            Span.Of(curves.SelectMany(curve => curve.Points).Select(point => point.Frames))
        );
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Noise of the stack raised by, %",
            Span.OfPositive(
                    curves
                        .SelectMany(curve => curve.Points)
                        .Select(point => point.Loss)
                        .Where(loss => loss > SmallestPercent)
                )
                .Including(accepted)
        );
        PlotMarks.AddLevel(model, accepted, $"accepted: {QuantityText.Number(accepted, 3)} %", labelAtRight: false);
        foreach (int rule in rules)
            PlotMarks.AddValue(model, rule, $"rule of thumb: {rule} {kind}", Palette.Faint, LineStyle.Dash);
        for (int i = 0; i < curves.Count; i++)
        {
            PlotBase.AddLine(
                model,
                curves[i].Name,
                Palette.Series(i),
                LineStyle.Solid,
                curves[i]
                    .Points.Where(point => point.Loss > SmallestPercent)
                    .Select(point => new DataPoint(point.Frames, point.Loss)),
                1.4
            );
            if (curves[i].Advised is double advised)
                PlotBase.AddPoints(
                    model,
                    new PointStyle(null, Palette.Series(i), Palette.Marker(i), Scale: 1.3),
                    [new BarPoint(advised, accepted, 0)]
                );
        }
        return new Panel(model, 0.45);
    }
}
