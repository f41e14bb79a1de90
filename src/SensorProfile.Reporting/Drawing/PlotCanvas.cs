using OxyPlot;
using SkiaSharp;

namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// Draws OxyPlot's plots on a Skia canvas with the fonts of the program, never with those of the machine.
/// </summary>
internal sealed class PlotCanvas(SKCanvas canvas) : ClippingRenderContext
{
    /// <inheritdoc/>
    public override void DrawLine(
        IList<ScreenPoint> points,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        if (points.Count < 2 || stroke.IsUndefined() || stroke.IsInvisible())
            return;
        using SKPath path = Path(points, closed: false);
        using SKPaint pen = Pen(stroke, thickness, dashArray, lineJoin);
        canvas.DrawPath(path, pen);
    }

    /// <inheritdoc/>
    public override void DrawPolygon(
        IList<ScreenPoint> points,
        OxyColor fill,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        using SKPath path = Path(points, closed: true);
        if (fill.IsVisible())
        {
            using SKPaint brush = Brush(fill);
            canvas.DrawPath(path, brush);
        }
        if (stroke.IsVisible() && thickness > 0)
        {
            using SKPaint pen = Pen(stroke, thickness, dashArray, lineJoin);
            canvas.DrawPath(path, pen);
        }
    }

    /// <inheritdoc/>
    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize
    )
    {
        if (string.IsNullOrEmpty(text) || !fill.IsVisible())
            return;
        using SKFont font = ReportFonts.Font(fontSize, fontWeight >= ReportFonts.BoldWeight);
        using SKPaint brush = Brush(fill);
        string[] lines = PlotText.Lines(text);
        double lineHeight = PlotText.LineHeight(fontSize);
        canvas.Save();
        canvas.Translate((float)p.X, (float)p.Y);
        canvas.RotateDegrees((float)rotation);
        double baseline = PlotText.FirstBaseline(lines.Length, fontSize, verticalAlignment);
        foreach (string line in lines)
        {
            double left = -PlotText.Share(horizontalAlignment) * ReportFonts.Width(line, font);
            canvas.DrawText(line, (float)left, (float)baseline, SKTextAlign.Left, font, brush);
            baseline += lineHeight;
        }
        canvas.Restore();
    }

    /// <inheritdoc/>
    public override void DrawImage(
        OxyImage source,
        double srcX,
        double srcY,
        double srcWidth,
        double srcHeight,
        double destX,
        double destY,
        double destWidth,
        double destHeight,
        double opacity,
        bool interpolate
    )
    {
        using SKBitmap bitmap = SKBitmap.Decode(source.GetData());
        using var image = SKImage.FromBitmap(bitmap);
        canvas.DrawImage(
            image,
            new SKRect((float)destX, (float)destY, (float)(destX + destWidth), (float)(destY + destHeight)),
            SKSamplingOptions.Default
        );
    }

    /// <inheritdoc/>
    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        PlotText.Measure(text, fontSize, fontWeight);

    /// <inheritdoc/>
    protected override void SetClip(OxyRect clippingRectangle)
    {
        canvas.Save();
        canvas.ClipRect(
            new SKRect(
                (float)clippingRectangle.Left,
                (float)clippingRectangle.Top,
                (float)clippingRectangle.Right,
                (float)clippingRectangle.Bottom
            )
        );
    }

    /// <inheritdoc/>
    protected override void ResetClip() => canvas.Restore();

    private static SKPath Path(IList<ScreenPoint> points, bool closed)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. points.Select(p => new SKPoint((float)p.X, (float)p.Y))], closed);
        return builder.Detach();
    }

    private static SKPaint Brush(OxyColor colour) =>
        new()
        {
            Color = Colour(colour),
            IsAntialias = true,
            Style = SKPaintStyle.Fill,
        };

    private static SKPaint Pen(OxyColor colour, double thickness, double[]? dashes, LineJoin join)
    {
        var pen = new SKPaint
        {
            Color = Colour(colour),
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)thickness,
            StrokeJoin = join == LineJoin.Miter ? SKStrokeJoin.Miter : SKStrokeJoin.Round,
        };
        if (dashes is { Length: > 0 })
        {
            using var effect = SKPathEffect.CreateDash([.. dashes.Select(dash => (float)(dash * thickness))], 0);
            pen.PathEffect = effect;
        }
        return pen;
    }

    private static SKColor Colour(OxyColor colour) => new(colour.R, colour.G, colour.B, colour.A);
}
