using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>
/// Noise that dark current adds to one light, against sensor temperature: for one sky with its uncertainty and the
/// chosen temperature, or for several skies side by side.
/// </summary>
internal static class SetpointPlot
{
    private const double SmallestPercent = 0.02;

    /// <summary>The plot, or null without a curve.</summary>
    /// <param name="skies">One answer, or one for each sky.</param>
    public static Panel? Draw(IReadOnlyList<SetpointAnswer> skies)
    {
        SetpointAnswer first = skies[0];
        if (first.Curve.Count < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        Span temperatures = Span.Of(first.Curve.Select(point => point.Temperature));
        PlotBase.AddLinear(model, AxisPosition.Bottom, "Sensor temperature, °C", temperatures);
        LogarithmicAxis axis = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Noise added to a light, %",
            Span.OfPositive(skies.SelectMany(Percents)).Including(100 * first.Loss)
        );
        PlotMarks.AddRange(
            model,
            new Span(first.MeasuredFrom, first.MeasuredTo),
            "measured range",
            axis.Minimum * 1.15,
            Palette.Shade
        );
        if (first.ColdestHeld is { } held && held > temperatures.Low)
            PlotMarks.AddRange(
                model,
                new Span(temperatures.Low, Math.Min(held, temperatures.High)),
                "beyond the cooler",
                axis.Minimum * 1.9,
                OxyColor.FromAColor(40, Palette.SkyBlue)
            );
        PlotMarks.AddLevel(model, 100 * first.Loss, $"accepted: {QuantityText.Number(100 * first.Loss, 3)} %");
        if (skies.Count == 1)
            DrawOne(model, first);
        else
            DrawSeveral(model, skies);
        return new Panel(model, 0.5);
    }

    private static void DrawOne(PlotModel model, SetpointAnswer sky)
    {
        model.Series.Add(Band(sky.Curve));
        PlotBase.AddLine(
            model,
            "typical pixel",
            Palette.Blue,
            LineStyle.Solid,
            Curve(sky, point => point.ExtraTypical),
            1.4
        );
        PlotBase.AddLine(
            model,
            $"pixel at {QuantityText.Number(100 * sky.Share)} %",
            Palette.Vermillion,
            LineStyle.Solid,
            Curve(sky, point => point.ExtraAtShare),
            1.4
        );
        if (sky.Quantities.GetValueOrDefault(QuantityNames.Setpoint) is not null)
            PlotMarks.AddValue(
                model,
                sky.At.Temperature,
                $"{Choice(sky)} {QuantityText.Degrees(sky.At.Temperature)}",
                Palette.Ink,
                LineStyle.Solid
            );
        if (sky.Quantities.GetValueOrDefault(QuantityNames.DiminishingReturns) is { } point)
            PlotMarks.AddValue(model, point.Value, "colder gains less than 1 %", Palette.Green, LineStyle.Dash);
    }

    private static string Choice(SetpointAnswer sky) =>
        !sky.Uncooled ? "run at"
        : sky.Limit is null ? "warmest within the loss"
        : "coldest measured";

    private static void DrawSeveral(PlotModel model, IReadOnlyList<SetpointAnswer> skies)
    {
        for (int i = 0; i < skies.Count; i++)
        {
            SetpointAnswer sky = skies[i];
            bool ranked = sky.Curve.Any(point => point.ExtraAtShare is not null);
            PlotBase.AddLine(
                model,
                sky.Sky.Name,
                Palette.Series(i),
                LineStyle.Solid,
                Curve(sky, point => ranked ? point.ExtraAtShare : point.ExtraTypical),
                1.4
            );
            if (ranked)
                PlotBase.AddLine(
                    model,
                    null,
                    Palette.Series(i),
                    LineStyle.Dot,
                    Curve(sky, point => point.ExtraTypical),
                    1.1
                );
            if (sky.Quantities.GetValueOrDefault(QuantityNames.Setpoint) is not null)
                PlotBase.AddPoints(
                    model,
                    new PointStyle(null, Palette.Series(i), Palette.Marker(i), Scale: 1.3),
                    [new BarPoint(sky.At.Temperature, Math.Max(sky.At.ExtraTypical, sky.At.ExtraAtShare ?? 0), 0)]
                );
        }
    }

    private static IEnumerable<DataPoint> Curve(SetpointAnswer sky, Func<SetpointPoint, double?> percent) =>
        sky
            .Curve.Where(point => percent(point) > SmallestPercent)
            .Select(point => new DataPoint(point.Temperature, percent(point)!.Value));

    private static IEnumerable<double> Percents(SetpointAnswer sky) =>
        sky
            .Curve.SelectMany(point => new[] { point.ExtraTypical, point.ExtraAtShare ?? point.ExtraTypical })
            .Where(percent => percent > SmallestPercent);

    private static AreaSeries Band(IReadOnlyList<SetpointPoint> curve)
    {
        var band = new AreaSeries
        {
            Color = OxyColors.Transparent,
            Color2 = OxyColors.Transparent,
            Fill = OxyColor.FromAColor(60, Palette.Blue),
            StrokeThickness = 0,
        };
        foreach (
            SetpointPoint point in curve.Where(point => point is { Low: > SmallestPercent, High: > SmallestPercent })
        )
        {
            band.Points.Add(new DataPoint(point.Temperature, point.Low!.Value));
            band.Points2.Add(new DataPoint(point.Temperature, point.High!.Value));
        }
        return band;
    }
}
