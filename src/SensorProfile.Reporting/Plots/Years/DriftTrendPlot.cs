using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Years;

/// <summary>
/// One quantity over the years: the points with 95 % bars, the line through them and its band, dashed where it
/// extrapolates.
/// </summary>
internal static class DriftTrendPlot
{
    private const double DaysPerYear = 365.25;

    /// <summary>A quantity with its line.</summary>
    public static Panel Draw(string heading, DriftTrend trend) =>
        Draw(heading, trend.Points[^1].Value.Unit, [.. trend.Points.Select(p => (p.DateUtc, p.Value))], trend.Forecast);

    /// <summary>A quantity of two dates, which have no line.</summary>
    public static Panel Draw(string heading, DriftChange change, DateTimeOffset first, DateTimeOffset last) =>
        Draw(heading, change.To.Unit, [(first, change.From), (last, change.To)], []);

    /// <summary>A date as a year with its fraction: 2031.79.</summary>
    public static double Year(DateTimeOffset date) =>
        2000 + (date - new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero)).TotalDays / DaysPerYear;

    private static Panel Draw(
        string heading,
        string unit,
        (DateTimeOffset Date, Measurement Value)[] points,
        IReadOnlyList<ForecastPoint> forecast
    )
    {
        PlotModel model = PlotBase.New(heading);
        double last = Year(points[^1].Date),
            reach = Math.Max((last - Year(points[0].Date)) / 3, 0.3);
        // a third beyond the data: farther out the band says nothing
        ForecastPoint[] shown = [.. forecast.Where(p => Year(p.DateUtc) <= last + reach)];
        PlotBase
            .AddLinear(
                model,
                AxisPosition.Bottom,
                "Year",
                Span.Of([.. points.Select(p => Year(p.Date)), .. shown.Select(p => Year(p.DateUtc))])
            )
            .LabelFormatter = YearLabel;
        string title = QuantityText.Unit(unit);
        Axis axis = PlotBase.AddLinear(
            model,
            AxisPosition.Left,
            title.Length == 0 ? "1" : title,
            Span.Of([
                .. points.SelectMany(p =>
                    new[]
                    {
                        p.Value.Value - PlotBase.BarFactor * p.Value.StandardUncertainty,
                        p.Value.Value + PlotBase.BarFactor * p.Value.StandardUncertainty,
                    }
                ),
                .. shown.SelectMany(p => new[] { p.Low, p.High }),
            ])
        );
        axis.IntervalLength = 28;
        if (shown.Length > 1)
            AddBand(model, shown, last);
        PlotBase.AddPoints(
            model,
            new PointStyle(null, Palette.Blue, MarkerType.Circle),
            [.. points.Select(p => new BarPoint(Year(p.Date), p.Value.Value, p.Value.StandardUncertainty))]
        );
        return new Panel(model, 0.52);
    }

    private static void AddBand(PlotModel model, ForecastPoint[] shown, double last)
    {
        var band = new AreaSeries
        {
            Color = OxyColors.Transparent,
            Color2 = OxyColors.Transparent,
            Fill = OxyColor.FromAColor(40, Palette.Ink),
            StrokeThickness = 0,
        };
        band.Points.AddRange(shown.Select(p => new DataPoint(Year(p.DateUtc), p.Low)));
        band.Points2.AddRange(shown.Select(p => new DataPoint(Year(p.DateUtc), p.High)));
        model.Series.Add(band);
        PlotBase.AddLine(
            model,
            null,
            Palette.Ink,
            LineStyle.Solid,
            shown.Where(p => !p.Beyond).Select(p => new DataPoint(Year(p.DateUtc), p.Value))
        );
        PlotBase.AddLine(
            model,
            null,
            Palette.Ink,
            LineStyle.Dash,
            shown.Where(p => Year(p.DateUtc) >= last - 1e-6).Select(p => new DataPoint(Year(p.DateUtc), p.Value))
        );
        model.Annotations.Add(
            new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = last,
                Color = Palette.Grid,
                LineStyle = LineStyle.Solid,
                StrokeThickness = 0.8,
                Layer = AnnotationLayer.BelowSeries,
            }
        );
    }

    /// <summary>Only whole years are labelled; between them a tick is enough.</summary>
    private static string YearLabel(double year) =>
        Math.Abs(year - Math.Round(year)) < 1e-6 ? AxisLabels.Plain(Math.Round(year)) : "";
}
