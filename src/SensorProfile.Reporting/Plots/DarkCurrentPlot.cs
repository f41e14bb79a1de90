using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Plots;

/// <summary>Dark current against temperature: the points, the laws, the band of the chosen one, and what it leaves.</summary>
internal static class DarkCurrentPlot
{
    private const double Beyond = 8;              // °C drawn beyond the measured range, dashed
    private const double StepCelsius = 0.5;

    /// <summary>Temperatures at which the laws are drawn and tabulated: beyond the measured range at both ends, in equal steps.</summary>
    public static IEnumerable<double> Temperatures(double low, double high) =>
        Enumerable.Range(0, (int)Math.Round((high - low + 2 * Beyond) / StepCelsius) + 1).Select(i => low - Beyond + i * StepCelsius);

    /// <summary>The plot, or null without a positive rate.</summary>
    public static Panel? Of(DarkCurrentProfile? dark, RateLaw law)
    {
        if (dark is null || !Series(dark).Any(series => series.Points.Any(point => point.Y > 0)))
            return null;
        var range = Span.Of(dark.Points.Select(point => point.Temperature));
        DarkCurrentModel? selected = dark.Models.FirstOrDefault(model => model.Name == dark.Selected);
        Curve? chosen = selected is null ? null : Curve.Of(selected, law, range);
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(model, AxisPosition.Bottom, "Sensor temperature, °C", new Span(range.Low - Beyond, range.High + Beyond));
        LogarithmicAxis upper = PlotBase.AddLogarithmic(model, AxisPosition.Left, "Dark current, e⁻/px/s", Rates(dark, chosen));
        ShadeMeasured(model, range);
        if (chosen is not null)
        {
            (BarPoint Point, int Series)[] residuals = [.. Residuals(dark, selected!, law)];
            StackedAxes.AddLower(model, upper, "Residual, %", Span.Of(residuals.SelectMany(r => new[] { r.Point.Y - 2.2 * r.Point.Uncertainty, r.Point.Y + 2.2 * r.Point.Uncertainty })).Including(0));
            DrawModels(model, dark, law, chosen, range);
            foreach (IGrouping<int, (BarPoint Point, int Series)> group in residuals.GroupBy(r => r.Series))
                PlotBase.AddPoints(model, Style(group.Key, null), [.. group.Select(r => r.Point)], StackedAxes.Lower);
        }
        DrawPoints(model, dark);
        return new Panel(model, chosen is null ? 0.6 : 0.82);
    }

    private static void DrawPoints(PlotModel model, DarkCurrentProfile dark)
    {
        foreach ((int index, string name, BarPoint[] points) in Series(dark))
            PlotBase.AddPoints(model, Style(index, name), points);
        BarPoint[] limits = [.. dark.Points.Where(point => point.UpperLimit is > 0).Select(point => new BarPoint(point.Temperature, point.UpperLimit!.Value, 0))];
        PlotBase.AddPoints(model, new PointStyle("upper limit, 95 %", Palette.Faint, MarkerType.Triangle, Filled: false), limits);
    }

    private static void DrawModels(PlotModel model, DarkCurrentProfile dark, RateLaw law, Curve chosen, Span range)
    {
        model.Series.Add(chosen.Band(Palette.Ink));
        int other = 0;
        foreach (DarkCurrentModel candidate in dark.Models.Where(candidate => candidate.Name != dark.Selected))
        {
            Curve curve = Curve.Of(candidate, law, range);
            PlotBase.AddLine(model, ModelNames.Text(candidate.Name), new[] { Palette.Orange, Palette.Purple, Palette.SkyBlue }[other++ % 3], LineStyle.Dot, curve.Points, 1);
        }
        string name = $"{ModelNames.Text(chosen.Name)} (chosen), band 95 %";
        PlotBase.AddLine(model, name, Palette.Ink, LineStyle.Solid, chosen.Points.Where(p => p.X >= range.Low - 1e-9 && p.X <= range.High + 1e-9), 1.6);
        PlotBase.AddLine(model, null, Palette.Ink, LineStyle.Dash, chosen.Points.Where(p => p.X <= range.Low), 1.2);
        PlotBase.AddLine(model, null, Palette.Ink, LineStyle.Dash, chosen.Points.Where(p => p.X >= range.High), 1.2);
    }

    /// <summary>Deviation of the points that the models describe from the chosen model, % of the model.</summary>
    internal static IEnumerable<(BarPoint Point, int Series)> Residuals(DarkCurrentProfile dark, DarkCurrentModel selected, RateLaw law)
    {
        int series = dark.Form == "variance" ? 2 : 0;
        foreach ((int index, _, BarPoint[] points) in Series(dark).Where(s => s.Index == series))
        {
            foreach (BarPoint point in points)
            {
                if (law(selected, point.X) is { Value: > 0 } expected)
                    yield return (new BarPoint(point.X, 100 * (point.Y / expected.Value - 1), 100 * point.Uncertainty / expected.Value), index);
            }
        }
    }

    private static IEnumerable<(int Index, string Name, BarPoint[] Points)> Series(DarkCurrentProfile dark)
    {
        BarPoint[] Points(Func<DarkCurrentPoint, Measurement?> rate) =>
            [.. dark.Points.Where(point => rate(point) is not null).Select(point => new BarPoint(point.Temperature, rate(point)!.Value, rate(point)!.StandardUncertainty))];
        yield return (0, "median pixel", Points(point => point.TypicalRate));
        yield return (1, "mean of all pixels", Points(point => point.MeanRate));
        yield return (2, "from the variance", Points(point => point.RateFromVariance));
    }

    private static PointStyle Style(int series, string? title) => series switch
    {
        0 => new PointStyle(title, Palette.Blue, MarkerType.Circle),
        1 => new PointStyle(title, Palette.Vermillion, MarkerType.Diamond, Filled: false),
        _ => new PointStyle(title, Palette.Green, MarkerType.Square, Filled: false),
    };

    private static Span Rates(DarkCurrentProfile dark, Curve? chosen) => Span.OfPositive(
        Series(dark).SelectMany(series => series.Points).Select(point => point.Y)
            .Concat(dark.Points.Select(point => point.UpperLimit ?? 0))
            .Concat(chosen?.Points.Select(point => point.Y) ?? []));

    private static void ShadeMeasured(PlotModel model, Span range) => model.Annotations.Add(new RectangleAnnotation
    {
        MinimumX = range.Low,
        MaximumX = range.High,
        Fill = Palette.Shade,
        Layer = AnnotationLayer.BelowAxes,
        Text = "measured range",
        TextColor = Palette.Faint,
        FontSize = 7.5,
        TextHorizontalAlignment = HorizontalAlignment.Center,
        TextVerticalAlignment = VerticalAlignment.Top,
        TextPosition = new DataPoint((range.Low + range.High) / 2, double.NaN),
    });

    /// <summary>A model as points and as a band of 95 %.</summary>
    private sealed record Curve(string Name, IReadOnlyList<DataPoint> Points, IReadOnlyList<(double X, double Low, double High)> Edges)
    {
        public static Curve Of(DarkCurrentModel model, RateLaw law, Span range)
        {
            (double X, Measurement Rate)[] rates = [.. Temperatures(range.Low, range.High)
                .Select(x => (x, law(model, x)))
                .Where(pair => pair.Item2 is { Value: > 0 })
                .Select(pair => (pair.x, pair.Item2!))];
            return new Curve(model.Name, [.. rates.Select(r => new DataPoint(r.X, r.Rate.Value))], [.. rates.Select(r => Edge(r.X, r.Rate))]);
        }

        /// <summary>On the scale of the logarithm, where the band of a rate cannot cross zero.</summary>
        private static (double X, double Low, double High) Edge(double x, Measurement rate)
        {
            double factor = Math.Exp(PlotBase.BarFactor * rate.StandardUncertainty / rate.Value);
            return (x, rate.Value / factor, rate.Value * factor);
        }

        public AreaSeries Band(OxyColor colour)
        {
            var band = new AreaSeries { Color = OxyColors.Transparent, Color2 = OxyColors.Transparent, Fill = OxyColor.FromAColor(40, colour), StrokeThickness = 0, RenderInLegend = false };
            band.Points.AddRange(Edges.Select(edge => new DataPoint(edge.X, edge.Low)));
            band.Points2.AddRange(Edges.Select(edge => new DataPoint(edge.X, edge.High)));
            return band;
        }
    }
}
