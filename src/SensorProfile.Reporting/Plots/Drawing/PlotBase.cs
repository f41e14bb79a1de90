using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>
/// The look that all plots share: axes with units, a quiet grid, markers that differ in shape as well as in colour.
/// </summary>
internal static class PlotBase
{
    /// <summary>Standard uncertainties that an error bar extends to either side: an interval of 95 %.</summary>
    public const double BarFactor = 1.96;

    private const double FontSize = 8.5;
    private const double MarkerSize = 3.4;

    /// <summary>An empty plot.</summary>
    /// <param name="title">Heading of a plot among several; null for none.</param>
    public static PlotModel New(string? title = null) =>
        new()
        {
            Culture = CultureInfo.InvariantCulture,
            DefaultFont = ReportFonts.Family,
            DefaultFontSize = FontSize,
            TextColor = Palette.Ink,
            Title = title,
            TitleFontSize = FontSize,
            TitleFontWeight = ReportFonts.BoldWeight,
            TitleHorizontalAlignment = TitleHorizontalAlignment.CenteredWithinPlotArea,
            TitlePadding = 2,
            PlotAreaBorderColor = Palette.Faint,
            PlotAreaBorderThickness = new OxyThickness(0.6),
            Padding = new OxyThickness(2, 4, 10, 2),
            IsLegendVisible = true,
        };

    /// <summary>Adds a legend above the plot.</summary>
    public static void AddLegend(PlotModel model) =>
        model.Legends.Add(
            new Legend
            {
                LegendPlacement = LegendPlacement.Outside,
                LegendPosition = LegendPosition.TopLeft,
                LegendOrientation = LegendOrientation.Horizontal,
                LegendFontSize = FontSize,
                LegendPadding = 0,
                LegendMargin = 2,
                LegendItemSpacing = 14,
                LegendSymbolLength = 18,
                LegendTextColor = Palette.Ink,
                LegendBackground = OxyColors.Undefined,
                LegendBorderThickness = 0,
            }
        );

    /// <summary>A linear axis.</summary>
    /// <param name="model">The plot.</param>
    /// <param name="position">Bottom or left.</param>
    /// <param name="title">Quantity and unit.</param>
    /// <param name="range">The data; the axis is a little longer.</param>
    public static LinearAxis AddLinear(PlotModel model, AxisPosition position, string title, Span range)
    {
        Span padded = range.Padded(0.06);
        var axis = new LinearAxis
        {
            IntervalLength = position == AxisPosition.Left ? 36 : 60,
            Minimum = padded.Low,
            Maximum = padded.High,
        };
        return Dress(model, axis, position, title, AxisLabels.Plain);
    }

    /// <summary>A logarithmic axis.</summary>
    /// <param name="model">The plot.</param>
    /// <param name="position">Bottom or left.</param>
    /// <param name="title">Quantity and unit.</param>
    /// <param name="range">The data, positive; the axis ends on 1, 2 or 5 times a power of ten.</param>
    public static LogarithmicAxis AddLogarithmic(PlotModel model, AxisPosition position, string title, Span range)
    {
        Span steps = range.ToDecadeSteps();
        var axis = new LogarithmicAxis
        {
            IntervalLength = position == AxisPosition.Bottom ? 48 : 36,
            Minimum = steps.Low,
            Maximum = steps.High,
            PowerPadding = false,
        };
        return Dress(model, axis, position, title, AxisLabels.Power);
    }

    /// <summary>Draws the line of zero deviation.</summary>
    public static void MarkZero(Axis axis)
    {
        axis.ExtraGridlines = [0];
        axis.ExtraGridlineStyle = LineStyle.Solid;
        axis.ExtraGridlineColor = Palette.Faint;
        axis.ExtraGridlineThickness = 0.8;
    }

    /// <summary>Points with error bars.</summary>
    public static void AddPoints(
        PlotModel model,
        PointStyle style,
        IReadOnlyList<BarPoint> points,
        string? yAxis = null
    )
    {
        if (points.Count == 0)
            return;
        bool logarithmic = Axis(model, yAxis) is LogarithmicAxis;
        var bars = new LineSeries
        {
            Color = OxyColor.FromAColor(170, style.Colour),
            StrokeThickness = 0.9,
            YAxisKey = yAxis,
            RenderInLegend = false,
        };
        var marks = new ScatterSeries
        {
            Title = style.Title,
            MarkerType = style.Marker,
            MarkerSize = MarkerSize * style.Scale,
            MarkerFill = style.Filled ? style.Colour : Palette.Paper,
            MarkerStroke = style.Colour,
            MarkerStrokeThickness = 1.1,
            YAxisKey = yAxis,
            RenderInLegend = style.Title is not null,
        };
        foreach (BarPoint point in points.Where(point => !logarithmic || point.Y > 0))
        {
            double half = BarFactor * point.Uncertainty;
            double low = logarithmic ? Math.Max(point.Y - half, Axis(model, yAxis)!.Minimum) : point.Y - half;
            if (half > 0)
                bars.Points.AddRange([
                    new DataPoint(point.X, low),
                    new DataPoint(point.X, point.Y + half),
                    DataPoint.Undefined,
                ]);
            marks.Points.Add(new ScatterPoint(point.X, point.Y));
        }
        model.Series.Add(bars);
        model.Series.Add(marks);
    }

    /// <summary>A line.</summary>
    public static LineSeries AddLine(
        PlotModel model,
        string? title,
        OxyColor colour,
        LineStyle style,
        IEnumerable<DataPoint> points,
        double thickness = 1.2,
        string? yAxis = null
    )
    {
        var line = new LineSeries
        {
            Title = title,
            Color = colour,
            LineStyle = style,
            StrokeThickness = thickness,
            YAxisKey = yAxis,
            RenderInLegend = title is not null,
        };
        line.Points.AddRange(points);
        model.Series.Add(line);
        return line;
    }

    private static Axis? Axis(PlotModel model, string? key) =>
        model.Axes.FirstOrDefault(axis => key is null ? axis.Position == AxisPosition.Left : axis.Key == key);

    private static T Dress<T>(PlotModel model, T axis, AxisPosition position, string title, Func<double, string> labels)
        where T : Axis
    {
        axis.Position = position;
        axis.Title = title;
        axis.LabelFormatter = labels;
        axis.TitleFontSize = FontSize;
        axis.FontSize = FontSize;
        axis.AxisTitleDistance = 6;
        axis.TextColor = axis.TitleColor = Palette.Ink;
        axis.TicklineColor = axis.MinorTicklineColor = Palette.Faint;
        axis.MajorTickSize = 4;
        axis.MinorTickSize = 2;
        axis.TickStyle = TickStyle.Outside;
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = Palette.Grid;
        axis.MajorGridlineThickness = 0.6;
        axis.AxislineStyle = LineStyle.None;
        model.Axes.Add(axis);
        return axis;
    }
}
