using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Years;

/// <summary>The measured pace of ageing beside published ones, in % per year.</summary>
internal static class DriftPacePlot
{
    /// <summary>The plot, the camera's own pace on top.</summary>
    /// <param name="heading">What ages.</param>
    /// <param name="own">Measured, % per year.</param>
    /// <param name="published">Ranges of others.</param>
    public static Panel Draw(string heading, Measurement own, IReadOnlyList<PublishedPace> published)
    {
        PlotModel model = PlotBase.New(heading);
        double half = PlotBase.BarFactor * own.StandardUncertainty;
        LinearAxis across = PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            "Growth, % per year",
            Span.Of([0, own.Value - half, own.Value + half, .. published.SelectMany(p => new[] { p.Low, p.High })])
        );
        PlotBase.MarkZero(across);
        string[] rows = [.. published.Reverse().Select(p => p.Label), "this camera"];
        LinearAxis up = PlotBase.AddLinear(model, AxisPosition.Left, "", new Span(-0.4, rows.Length - 0.6));
        (up.MajorStep, up.MinorStep) = (1, 1);
        up.LabelFormatter = value =>
            Math.Abs(value - Math.Round(value)) < 1e-6 && value > -0.5 && value < rows.Length - 0.5
                ? rows[(int)Math.Round(value)]
                : "";
        for (int i = 0; i < published.Count; i++)
        {
            PublishedPace pace = published[published.Count - 1 - i];
            LineSeries range = PlotBase.AddLine(
                model,
                null,
                Palette.Faint,
                LineStyle.Solid,
                [new DataPoint(pace.Low, i), new DataPoint(pace.High, i)],
                4
            );
            range.LineJoin = LineJoin.Miter;
            if (pace.Low == pace.High)
                PlotBase.AddPoints(
                    model,
                    new PointStyle(null, Palette.Faint, MarkerType.Square),
                    [new BarPoint(pace.Low, i, 0)]
                );
        }
        PlotBase.AddLine(
            model,
            null,
            Palette.Blue,
            LineStyle.Solid,
            [new DataPoint(own.Value - half, published.Count), new DataPoint(own.Value + half, published.Count)],
            1.2
        );
        PlotBase.AddPoints(
            model,
            new PointStyle(null, Palette.Blue, MarkerType.Circle),
            [new BarPoint(own.Value, published.Count, 0)]
        );
        return new Panel(model, 0.13 + 0.065 * rows.Length);
    }
}
