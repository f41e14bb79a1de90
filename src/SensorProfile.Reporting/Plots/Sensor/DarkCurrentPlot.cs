using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>
/// Dark current against temperature: the points, the laws, the band of the chosen law, and its residuals.
/// </summary>
internal static class DarkCurrentPlot
{
    private const double Beyond = 8; // °C drawn beyond the measured range, dashed
    private const double StepCelsius = 0.5;
    private const int OtherLaws = 3;
    private const double StillPossible = 6; // a law whose criterion is higher by more than this is ruled out

    private static readonly OxyColor[] _otherColours = [Palette.Orange, Palette.Purple, Palette.SkyBlue];

    /// <summary>
    /// Temperatures at which the laws are drawn and tabulated: beyond the measured range at both ends, in equal steps.
    /// </summary>
    public static IEnumerable<double> Temperatures(double low, double high) =>
        Enumerable
            .Range(0, (int)Math.Round((high - low + 2 * Beyond) / StepCelsius) + 1)
            .Select(i => low - Beyond + i * StepCelsius);

    /// <summary>The plot, or null without a positive rate or limit.</summary>
    public static Panel? Draw(DarkCurrentProfile? dark)
    {
        if (dark is null || !Rates(dark).Any())
            return null;
        var laws = new RateLaws(dark);
        var range = Span.Of(dark.Points.Select(point => point.Temperature));
        (double X, Measurement Rate)[] chosen = laws.CanPredict
            ?
            [
                .. Temperatures(range.Low, range.High)
                    .Select(x => (x, laws.Predicted(x)!))
                    .Where(p => p.Item2.Value > 0),
            ]
            : [];
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            "Sensor temperature, °C",
            new Span(range.Low - 0.8 * Beyond, range.High + 0.8 * Beyond)
        );
        LogarithmicAxis upper = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Dark current, e⁻/px/s",
            Span.OfPositive(Rates(dark).Concat(chosen.Select(p => p.Rate.Value)))
        );
        ShadeMeasured(model, range, 0.96 * upper.Maximum);
        DrawPoints(model, dark);
        if (chosen.Length > 0)
        {
            DrawLaws(model, dark, laws, chosen, range);
            DrawResiduals(model, dark, laws, upper);
        }
        return new Panel(model, chosen.Length > 0 ? 0.7 : 0.5);
    }

    private static void DrawPoints(PlotModel model, DarkCurrentProfile dark)
    {
        foreach ((int index, string name, BarPoint[] points) in Series(dark))
            PlotBase.AddPoints(model, Style(index, name), points);
        BarPoint[] limits =
        [
            .. dark
                .Points.Where(point => point.UpperLimit is > 0)
                .Select(point => new BarPoint(point.Temperature, point.UpperLimit!.Value, 0)),
        ];
        PlotBase.AddPoints(
            model,
            new PointStyle("upper limit, 95 %", Palette.Faint, MarkerType.Triangle, Filled: false),
            limits
        );
    }

    private static void DrawLaws(
        PlotModel model,
        DarkCurrentProfile dark,
        RateLaws laws,
        (double X, Measurement Rate)[] chosen,
        Span range
    )
    {
        model.Series.Insert(0, Band(chosen));
        double best = dark.Models.Min(law => law.InformationCriterion ?? double.PositiveInfinity);
        DarkCurrentModel[] others =
        [
            .. laws
                .Models.Where(law => law.Name != dark.Selected && law.InformationCriterion <= best + StillPossible)
                .OrderBy(law => law.InformationCriterion)
                .Take(OtherLaws),
        ];
        for (int i = 0; i < others.Length; i++)
        {
            DarkCurrentModel law = others[i];
            PlotBase.AddLine(
                model,
                ModelNames.Text(law.Name),
                _otherColours[i],
                LineStyle.Dot,
                chosen.Select(p => new DataPoint(p.X, laws.Rate(law, p.X).Value)).Where(p => p.Y > 0),
                1.1
            );
        }
        DataPoint[] line = [.. chosen.Select(p => new DataPoint(p.X, p.Rate.Value))];
        PlotBase.AddLine(
            model,
            ModelNames.Text(dark.Selected!) + " (chosen)",
            Palette.Ink,
            LineStyle.Solid,
            line.Where(p => p.X > range.Low - StepCelsius && p.X < range.High + StepCelsius),
            1.5
        );
        PlotBase.AddLine(model, null, Palette.Ink, LineStyle.Dash, line.Where(p => p.X <= range.Low), 1.1);
        PlotBase.AddLine(model, null, Palette.Ink, LineStyle.Dash, line.Where(p => p.X >= range.High), 1.1);
    }

    private static void DrawResiduals(PlotModel model, DarkCurrentProfile dark, RateLaws laws, Axis upper)
    {
        BarPoint[] residuals = [.. Residuals(dark, laws)];
        StackedAxes.AddLower(
            model,
            upper,
            "Residual, %",
            Span.Of(residuals.SelectMany(p => new[] { p.Y - 2.2 * p.Uncertainty, p.Y + 2.2 * p.Uncertainty }))
                .Including(0)
        );
        PlotBase.AddPoints(model, Style(Fitted(dark), null), residuals, StackedAxes.Lower);
    }

    /// <summary>Deviation of the points that the laws describe from the chosen law, % of the law.</summary>
    internal static IEnumerable<BarPoint> Residuals(DarkCurrentProfile dark, RateLaws laws)
    {
        foreach (
            BarPoint point in Series(dark)
                .Where(series => series.Index == Fitted(dark))
                .SelectMany(series => series.Points)
        )
        {
            if (laws.Predicted(point.X) is { Value: > 0 } expected)
                yield return new BarPoint(
                    point.X,
                    100 * (point.Y / expected.Value - 1),
                    100 * point.Uncertainty / expected.Value
                );
        }
    }

    /// <summary>Index of the series that the laws describe.</summary>
    private static int Fitted(DarkCurrentProfile dark) => dark.Form == DarkForm.Variance ? 2 : 0;

    private static IEnumerable<(int Index, string Name, BarPoint[] Points)> Series(DarkCurrentProfile dark)
    {
        BarPoint[] Points(Func<DarkCurrentPoint, Measurement?> rate) =>
            [
                .. dark
                    .Points.Where(point => rate(point) is not null)
                    .Select(point => new BarPoint(
                        point.Temperature,
                        rate(point)!.Value,
                        rate(point)!.StandardUncertainty
                    )),
            ];
        yield return (0, "median pixel", Points(point => point.TypicalRate));
        yield return (1, "mean of all pixels", Points(point => point.MeanRate));
        yield return (2, "from the variance", Points(point => point.RateFromVariance));
    }

    private static PointStyle Style(int series, string? title) =>
        series switch
        {
            0 => new PointStyle(title, Palette.Blue, MarkerType.Circle),
            1 => new PointStyle(title, Palette.Vermillion, MarkerType.Diamond, Filled: false),
            _ => new PointStyle(title, Palette.Green, MarkerType.Square, Filled: false),
        };

    private static IEnumerable<double> Rates(DarkCurrentProfile dark) =>
        Series(dark)
            .SelectMany(series => series.Points)
            .Select(point => point.Y)
            .Concat(dark.Points.Select(point => point.UpperLimit ?? 0))
            .Where(rate => rate > 0);

    private static void ShadeMeasured(PlotModel model, Span range, double top)
    {
        model.Annotations.Add(
            new RectangleAnnotation
            {
                MinimumX = range.Low,
                MaximumX = range.High,
                Fill = Palette.Shade,
                Layer = AnnotationLayer.BelowAxes,
            }
        );
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = "measured range",
                TextPosition = new DataPoint((range.Low + range.High) / 2, top),
                TextColor = Palette.Faint,
                FontSize = 7.5,
                StrokeThickness = 0,
                TextHorizontalAlignment = HorizontalAlignment.Center,
                TextVerticalAlignment = VerticalAlignment.Top,
                Layer = AnnotationLayer.BelowSeries,
            }
        );
    }

    /// <summary>A 95 % band computed on a logarithmic scale, where it cannot cross zero.</summary>
    private static AreaSeries Band((double X, Measurement Rate)[] rates)
    {
        var band = new AreaSeries
        {
            Color = OxyColors.Transparent,
            Color2 = OxyColors.Transparent,
            Fill = OxyColor.FromAColor(45, Palette.Ink),
            StrokeThickness = 0,
            Title = "95 % band",
        };
        foreach ((double x, Measurement rate) in rates)
        {
            double factor = Math.Exp(PlotBase.BarFactor * rate.StandardUncertainty / rate.Value);
            band.Points.Add(new DataPoint(x, rate.Value / factor));
            band.Points2.Add(new DataPoint(x, rate.Value * factor));
        }
        return band;
    }
}
