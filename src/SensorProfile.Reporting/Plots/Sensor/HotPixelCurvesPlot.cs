using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>The hot-pixel curve at each measured temperature.</summary>
internal static class HotPixelCurvesPlot
{
    /// <summary>The plot; null with fewer than two temperatures.</summary>
    public static Panel? Draw(FixedPatternProfile pattern)
    {
        (double Temperature, HotPixelCount[] Counts)[] curves =
        [
            .. pattern
                .HotPixelCurves.Select(c =>
                    (c.Temperature, c.Counts.Where(p => p is { Count: > 0, Threshold: > 0 }).ToArray())
                )
                .Where(c => c.Item2.Length > 1),
        ];
        if (curves.Length < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            "Dark rate, e⁻/px/s",
            Span.OfPositive(curves.SelectMany(c => c.Counts).Select(p => p.Threshold))
        );
        LogarithmicAxis axis = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Pixels above that rate",
            Span.OfPositive(curves.SelectMany(c => c.Counts).Select(p => (double)p.Count))
        );
        for (int i = 0; i < curves.Length; i++)
        {
            OxyColor colour = Palette.Series(i);
            var band = new AreaSeries
            {
                Color = OxyColors.Transparent,
                Color2 = OxyColors.Transparent,
                Fill = OxyColor.FromAColor(45, colour),
                StrokeThickness = 0,
            };
            band.Points.AddRange(
                curves[i].Counts.Select(p => new DataPoint(p.Threshold, Math.Max(p.Low, axis.Minimum)))
            );
            band.Points2.AddRange(curves[i].Counts.Select(p => new DataPoint(p.Threshold, p.High)));
            model.Series.Add(band);
            PlotBase.AddLine(
                model,
                QuantityText.Temperature(curves[i].Temperature),
                colour,
                i % 2 == 0 ? LineStyle.Solid : LineStyle.Dash,
                curves[i].Counts.Select(p => new DataPoint(p.Threshold, p.Count)),
                1.2
            );
        }
        return new Panel(model, 0.4);
    }
}
