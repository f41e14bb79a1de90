using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>
/// Number of pixels above a dark rate against that rate, with counting intervals; and how their doubling temperature
/// depends on the rate.
/// </summary>
internal static class HotPixelPlot
{
    /// <summary>The counts, or null without a curve.</summary>
    public static Panel? Counts(FixedPatternProfile? pattern)
    {
        HotPixelCount[] counts =
        [
            .. (pattern?.HotPixelCurve ?? []).Where(count => count is { Count: > 0, Threshold: > 0 }),
        ];
        if (counts.Length < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            $"Dark rate{At(pattern!)}, e⁻/px/s",
            Span.OfPositive(counts.Select(count => count.Threshold))
        );
        LogarithmicAxis axis = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Pixels above that rate",
            Span.OfPositive(counts.SelectMany(count => new[] { count.Low, count.High, count.Count }))
        );
        model.Series.Add(Band(counts, axis.Minimum));
        PlotBase.AddLine(
            model,
            null,
            Palette.Blue,
            LineStyle.Solid,
            counts.Select(count => new DataPoint(count.Threshold, count.Count)),
            1.4
        );
        PlotBase.AddPoints(
            model,
            new PointStyle(null, Palette.Blue, MarkerType.Circle, Scale: 0.8),
            [.. counts.Select(count => new BarPoint(count.Threshold, count.Count, 0))]
        );
        if (pattern!.Thresholds is { } thresholds)
        {
            AddThreshold(model, axis, "warm", thresholds.WarmRate, counts, Palette.Orange);
            AddThreshold(model, axis, "hot", thresholds.HotRate, counts, Palette.Vermillion);
        }
        return new Panel(model, 0.4);
    }

    /// <summary>Doubling temperature by class of rate, or null without classes.</summary>
    public static Panel? Doubling(FixedPatternProfile? pattern)
    {
        DoublingByRate[] classes =
        [
            .. (pattern?.DoublingByRate ?? []).Where(c => c.RateFrom > 0 && c.RateTo > c.RateFrom),
        ];
        if (classes.Length < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            $"Dark rate of the class{At(pattern!)}, e⁻/px/s",
            Span.OfPositive(classes.SelectMany(c => new[] { c.RateFrom, c.RateTo }))
        );
        PlotBase.AddLinear(
            model,
            AxisPosition.Left,
            "Doubling, °C",
            Span.Of(classes.SelectMany(c => new[] { c.Doubling.Value - c.Spread, c.Doubling.Value + c.Spread }))
        );
        LineSeries spread = PlotBase.AddLine(
            model,
            "spread over the pixels (one standard deviation)",
            OxyColor.FromAColor(110, Palette.SkyBlue),
            LineStyle.Solid,
            classes.SelectMany(c =>
                new[]
                {
                    new DataPoint(Middle(c), c.Doubling.Value - c.Spread),
                    new DataPoint(Middle(c), c.Doubling.Value + c.Spread),
                    DataPoint.Undefined,
                }
            ),
            5
        );
        spread.LineJoin = LineJoin.Miter;
        PlotBase.AddPoints(
            model,
            new PointStyle("median of the class", Palette.Blue, MarkerType.Circle),
            [.. classes.Select(c => new BarPoint(Middle(c), c.Doubling.Value, c.Doubling.StandardUncertainty))]
        );
        return new Panel(model, 0.34);
    }

    private static double Middle(DoublingByRate c) => Math.Sqrt(c.RateFrom * c.RateTo);

    private static string At(FixedPatternProfile pattern) =>
        pattern.ReferenceTemperature is { } temperature ? $" at {QuantityText.Degrees(temperature)}" : "";

    private static AreaSeries Band(HotPixelCount[] counts, double floor)
    {
        var band = new AreaSeries
        {
            Color = OxyColors.Transparent,
            Color2 = OxyColors.Transparent,
            Fill = OxyColor.FromAColor(60, Palette.Blue),
            StrokeThickness = 0,
        };
        band.Points.AddRange(counts.Select(count => new DataPoint(count.Threshold, Math.Max(count.Low, floor))));
        band.Points2.AddRange(counts.Select(count => new DataPoint(count.Threshold, count.High)));
        return band;
    }

    private static void AddThreshold(
        PlotModel model,
        Axis axis,
        string name,
        double rate,
        HotPixelCount[] counts,
        OxyColor colour
    )
    {
        if (rate < counts[0].Threshold || rate > counts[^1].Threshold)
            return;
        double height = counts.First(count => count.Threshold >= rate).Count;
        // the curve runs through the upper half: the words go below it
        bool high = height * height > axis.Minimum * axis.Maximum;
        model.Annotations.Add(
            new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = rate,
                Color = colour,
                LineStyle = LineStyle.Dash,
                Text = $"{name}: typical + {QuantityText.Number(rate)}",
                TextColor = Palette.Ink,
                FontSize = 7.5,
                TextLinePosition = high ? 0.02 : 0.98,
                TextHorizontalAlignment = high ? HorizontalAlignment.Left : HorizontalAlignment.Right,
                TextVerticalAlignment = VerticalAlignment.Top,
            }
        );
    }
}
