using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Distribution of temporal noise over the pixels: the bulk, and the tail of flickering pixels.</summary>
internal static class NoiseDistributionPlot
{
    /// <summary>The plot, or null without a distribution.</summary>
    public static Panel? Draw(NoiseDistribution? noise)
    {
        if (
            noise is null
            || noise.BinEdges.Count < 2
            || noise.Counts.Count < noise.BinEdges.Count - 1
            || noise.Counts.All(count => count == 0)
        )
            return null;
        int last = Enumerable.Range(0, Bins(noise)).Last(i => noise.Counts[i] > 0);
        double[] edges = [.. Enumerable.Range(0, last + 2).Select(i => Edge(noise, i))];
        PlotModel model = PlotBase.New();
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            $"Temporal noise of a pixel, {QuantityText.Unit(noise.Unit)}",
            Span.Of(edges)
        );
        LogarithmicAxis counts = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Pixels in each step",
            Span.OfPositive(noise.Counts.Select(count => (double)count))
                .Including(1)
                .Including(Math.Pow(noise.Counts.Max(), 1.45))
        );
        model.Series.Add(Steps(noise, edges, counts.Minimum));
        (string Name, double Value)[] marks =
        [
            ("median", noise.Median),
            ("99 %", noise.Percentile99),
            ("99.9 %", noise.Percentile999),
        ];
        foreach ((string name, double value) in marks.Where(mark => mark.Value > 0))
            model.Annotations.Add(Mark($"{name} {QuantityText.Number(value, 3)}", value));
        return new Panel(model, 0.42);
    }

    private static int Bins(NoiseDistribution noise) => Math.Min(noise.Counts.Count, noise.BinEdges.Count);

    /// <summary>Lower edge of a bin; the bin beyond the last is taken to be as wide as the last.</summary>
    private static double Edge(NoiseDistribution noise, int index) =>
        index < noise.BinEdges.Count ? noise.BinEdges[index] : 2 * noise.BinEdges[^1] - noise.BinEdges[^2];

    private static AreaSeries Steps(NoiseDistribution noise, double[] edges, double floor)
    {
        var area = new AreaSeries
        {
            Color = Palette.Blue,
            Fill = OxyColor.FromAColor(70, Palette.Blue),
            StrokeThickness = 1,
            Color2 = OxyColors.Transparent,
        };
        for (int i = 0; i + 1 < edges.Length; i++)
        {
            double top = Math.Max(noise.Counts[i], floor);
            area.Points.AddRange([new DataPoint(edges[i], top), new DataPoint(edges[i + 1], top)]);
            area.Points2.AddRange([new DataPoint(edges[i], floor), new DataPoint(edges[i + 1], floor)]);
        }
        return area;
    }

    private static LineAnnotation Mark(string text, double value) =>
        new()
        {
            Type = LineAnnotationType.Vertical,
            X = value,
            Color = Palette.Vermillion,
            LineStyle = LineStyle.Dash,
            StrokeThickness = 1,
            Text = text,
            TextColor = Palette.Ink,
            FontSize = 7.5,
            TextOrientation = AnnotationTextOrientation.Vertical,
            TextLinePosition = 0.98,
            TextHorizontalAlignment = HorizontalAlignment.Right,
            TextVerticalAlignment = VerticalAlignment.Top,
        };
}
