using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>
/// Labelled lines and shades that compare a curve with a limit, a rule of thumb or a choice.
/// </summary>
internal static class PlotMarks
{
    private const double FontSize = 7.5;

    /// <summary>A limit across the plot.</summary>
    public static void AddLevel(PlotModel model, double y, string text, bool labelAtRight = false) =>
        model.Annotations.Add(
            new LineAnnotation
            {
                Type = LineAnnotationType.Horizontal,
                Y = y,
                Color = Palette.Faint,
                LineStyle = LineStyle.Dash,
                StrokeThickness = 1,
                Text = text,
                TextColor = Palette.Faint,
                FontSize = FontSize,
                TextLinePosition = labelAtRight ? 0.99 : 0.01,
                TextHorizontalAlignment = labelAtRight ? HorizontalAlignment.Right : HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Bottom,
            }
        );

    /// <summary>
    /// A value of the abscissa: a rule of thumb (dashed) or an answer (solid), with its label beside the line.
    /// </summary>
    public static void AddValue(
        PlotModel model,
        double x,
        string text,
        OxyColor colour,
        LineStyle style,
        bool textAtLeft = false
    )
    {
        model.Annotations.Add(
            new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = x,
                Color = colour,
                LineStyle = style,
                StrokeThickness = style == LineStyle.Solid ? 1.3 : 1,
            }
        );
        Axis ordinate = model.Axes.First(axis => axis.Position == AxisPosition.Left);
        double top =
            ordinate is LogarithmicAxis
                ? ordinate.Maximum * Math.Pow(ordinate.Minimum / ordinate.Maximum, 0.02)
                : ordinate.Maximum - 0.02 * (ordinate.Maximum - ordinate.Minimum);
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = text,
                TextPosition = new DataPoint(x, top),
                TextRotation = -90,
                Offset = new ScreenVector(textAtLeft ? -3 : 3, 0),
                TextColor = Palette.Ink,
                FontSize = FontSize,
                StrokeThickness = 0,
                TextHorizontalAlignment = HorizontalAlignment.Right,
                TextVerticalAlignment = textAtLeft ? VerticalAlignment.Bottom : VerticalAlignment.Top,
            }
        );
    }

    /// <summary>A shaded range of the abscissa with its name at the top.</summary>
    public static void AddRange(PlotModel model, Span range, string text, double y, OxyColor fill)
    {
        model.Annotations.Add(
            new RectangleAnnotation
            {
                MinimumX = range.Low,
                MaximumX = range.High,
                Fill = fill,
                Layer = AnnotationLayer.BelowAxes,
            }
        );
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = text,
                TextPosition = new DataPoint((range.Low + range.High) / 2, y),
                TextColor = Palette.Faint,
                FontSize = FontSize,
                StrokeThickness = 0,
                TextHorizontalAlignment = HorizontalAlignment.Center,
                TextVerticalAlignment = VerticalAlignment.Bottom,
                Layer = AnnotationLayer.BelowSeries,
            }
        );
    }
}
