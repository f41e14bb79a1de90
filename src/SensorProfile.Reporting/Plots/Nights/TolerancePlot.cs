using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>
/// How much of each limit a mismatch of the darks uses up, darks warmer and darks colder, with the rule of thumb of 5 °C
/// drawn.
/// </summary>
internal static class TolerancePlot
{
    private const double RuleCelsius = 5;
    private const double Smallest = 0.01,
        Largest = 100; // times the limit

    private static readonly (
        BindingCause Cause,
        string Name,
        OxyColor Colour,
        LineStyle Style,
        Func<TolerancePoint, double?> Load
    )[] _causes =
    [
        (BindingCause.Typical, "typical pixels", Palette.Blue, LineStyle.Solid, point => point.Typical),
        (BindingCause.HotPixels, "hot pixels", Palette.Vermillion, LineStyle.Solid, point => point.HotPixels),
        (BindingCause.Glow, "glow", Palette.Green, LineStyle.Dash, point => point.Glow),
        (BindingCause.Level, "level", Palette.Purple, LineStyle.Dash, point => point.Level),
    ];

    /// <summary>Two plots, darks warmer and darks colder than the lights; none without a curve.</summary>
    /// <param name="answer">The tolerance.</param>
    /// <param name="words">What the plots are for, in a few words; empty for none.</param>
    public static IReadOnlyList<Panel> Draw(ToleranceAnswer answer, string words = "") =>
        answer.Curve.Count == 0
            ? []
            :
            [
                Side(
                    answer,
                    answer.Curve.Where(point => point.Mismatch > 0),
                    QuantityNames.ToleranceWarmer,
                    Title(words, "darks warmer")
                ),
                Side(
                    answer,
                    answer.Curve.Where(point => point.Mismatch < 0).Reverse(),
                    QuantityNames.ToleranceColder,
                    Title(words, "darks colder")
                ),
            ];

    private static string Title(string words, string side) =>
        words.Length == 0 ? char.ToUpperInvariant(side[0]) + side[1..] : $"{words}, {side}";

    private static Panel Side(ToleranceAnswer answer, IEnumerable<TolerancePoint> side, string quantity, string title)
    {
        TolerancePoint[] points = [.. side];
        PlotModel model = PlotBase.New(title);
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            "Darks and lights apart by, °C",
            Span.Of(points.Select(point => Math.Abs(point.Mismatch)))
        );
        PlotBase.AddLogarithmic(model, AxisPosition.Left, "Times the limit", new Span(Smallest * 1.1, Largest / 1.1));
        PlotMarks.AddLevel(model, 1, "limit");
        foreach (
            (
                BindingCause cause,
                string name,
                OxyColor colour,
                LineStyle style,
                Func<TolerancePoint, double?> load
            ) in _causes
        )
        {
            DataPoint[] line =
            [
                .. points
                    .Where(point => load(point) is >= Smallest and <= Largest)
                    .Select(point => new DataPoint(Math.Abs(point.Mismatch), load(point)!.Value)),
            ];
            if (line.Length > 1)
                PlotBase.AddLine(model, name, colour, style, line, cause == answer.BindingCause ? 2.2 : 1.2);
        }
        PlotMarks.AddValue(model, RuleCelsius, "rule of thumb: 5 °C", Palette.Faint, LineStyle.Dash);
        if (answer.Quantities.GetValueOrDefault(quantity) is { } tolerance)
        {
            if (answer.Intervals.GetValueOrDefault(quantity) is { Low: { } low, High: { } high } && low > 0)
                model.Annotations.Add(
                    new OxyPlot.Annotations.RectangleAnnotation
                    {
                        MinimumX = low,
                        MaximumX = high,
                        Fill = OxyColor.FromAColor(60, Palette.Orange),
                        Layer = OxyPlot.Annotations.AnnotationLayer.BelowSeries,
                    }
                );
            PlotMarks.AddValue(
                model,
                tolerance.Value,
                $"this camera: {QuantityText.Number(tolerance.Value, 2)} °C",
                Palette.Ink,
                LineStyle.Solid,
                textAtLeft: tolerance.Value is > 0.04 and < RuleCelsius
            );
        }
        return new Panel(model, 0.75);
    }
}
