using System.Globalization;
using System.Text;
using OxyPlot;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// Draws OxyPlot's plots as SVG whose colours are variables of the page, so that one drawing serves light and dark.
/// </summary>
/// <param name="idPrefix">Prefix of the id of every clipping path; unique within the page.</param>
internal sealed class PlotSvg(string idPrefix) : ClippingRenderContext
{
    private readonly StringBuilder _svg = new();

    // consecutive shapes painted alike share one style
    private readonly List<string> _alike = [];
    private string _paint = "";
    private int _clips;

    /// <summary>The elements drawn so far.</summary>
    public string Elements
    {
        get
        {
            Flush();
            return _svg.ToString();
        }
    }

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
        if (points.Count >= 2 && stroke.IsVisible())
            Shape($"<path d=\"{Path(points)}\"", Paint(OxyColors.Transparent, stroke, thickness, dashArray));
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
        Shape($"<path d=\"{Path(points)}Z\"", Paint(fill, stroke, thickness, dashArray));
    }

    /// <inheritdoc/>
    public override void DrawRectangle(
        OxyRect rectangle,
        OxyColor fill,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode
    )
    {
        Shape($"<rect{Box(rectangle)}", Paint(fill, stroke, thickness, null));
    }

    /// <inheritdoc/>
    public override void DrawEllipse(
        OxyRect extents,
        OxyColor fill,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode
    )
    {
        Shape(
            $"<circle cx=\"{N(extents.Center.X)}\" cy=\"{N(extents.Center.Y)}\" r=\"{N(extents.Width / 2)}\"",
            Paint(fill, stroke, thickness, null)
        );
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
        string[] lines = PlotText.Lines(text);
        double baseline = PlotText.FirstBaseline(lines.Length, fontSize, verticalAlignment);
        string anchor = horizontalAlignment switch
        {
            HorizontalAlignment.Center => " text-anchor=\"middle\"",
            HorizontalAlignment.Right => " text-anchor=\"end\"",
            _ => "",
        };
        string weight = fontWeight >= ReportFonts.BoldWeight ? " font-weight=\"bold\"" : "";
        string turn = rotation == 0 ? "" : $" rotate({N(rotation)})";
        foreach (string line in lines)
        {
            Append(
                $"<text transform=\"translate({N(p.X)} {N(p.Y)}){turn}\" y=\"{N(baseline)}\" "
                    + $"font-size=\"{N(fontSize)}\"{weight}{anchor}"
                    + $"{Paint(fill, OxyColors.Transparent, 0, null)}>{Markup.Escape(line)}</text>"
            );
            baseline += PlotText.LineHeight(fontSize);
        }
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
    ) =>
        Append(
            $"<image{Box(new OxyRect(destX, destY, destWidth, destHeight))} preserveAspectRatio=\"none\" "
                + "style=\"image-rendering:pixelated\" "
                + $"href=\"data:image/png;base64,{Convert.ToBase64String(source.GetData())}\"/>"
        );

    /// <inheritdoc/>
    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        PlotText.Measure(text, fontSize, fontWeight);

    /// <inheritdoc/>
    protected override void SetClip(OxyRect clippingRectangle)
    {
        string id = $"{idPrefix}{_clips++}";
        Append($"<clipPath id=\"{id}\"><rect{Box(clippingRectangle)}/></clipPath><g clip-path=\"url(#{id})\">");
    }

    /// <inheritdoc/>
    protected override void ResetClip() => Append("</g>");

    private void Shape(string element, string paint)
    {
        if (paint != _paint)
            Flush();
        _paint = paint;
        _alike.Add(element);
    }

    private void Flush()
    {
        if (_alike.Count == 1)
            _svg.Append(_alike[0]).Append(_paint).Append("/>\n");
        else if (_alike.Count > 1)
            _svg.Append("<g").Append(_paint).Append(">\n").AppendJoin("/>\n", _alike).Append("/>\n</g>\n");
        _alike.Clear();
    }

    private void Append(string element)
    {
        Flush();
        _svg.Append(element).Append('\n');
    }

    private static string Path(IList<ScreenPoint> points)
    {
        var path = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
            path.Append(i == 0 ? 'M' : 'L').Append(N(points[i].X)).Append(' ').Append(N(points[i].Y));
        return path.ToString();
    }

    private static string Box(OxyRect box) =>
        $" x=\"{N(box.Left)}\" y=\"{N(box.Top)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\"";

    /// <summary>A style rather than attributes, because only a style supports variables in every browser.</summary>
    private static string Paint(OxyColor fill, OxyColor stroke, double thickness, double[]? dashes)
    {
        string inside = fill.IsVisible() ? $"fill:{Css(fill)}{Opacity("fill", fill)}" : "fill:none";
        if (!stroke.IsVisible() || thickness <= 0)
            return $" style=\"{inside}\"";
        string pattern = dashes is { Length: > 0 }
            ? $" stroke-dasharray=\"{string.Join(' ', dashes.Select(dash => N(dash * thickness)))}\""
            : "";
        return $" style=\"{inside};stroke:{Css(stroke)}{Opacity("stroke", stroke)}\" stroke-width=\"{N(thickness)}\"{pattern}";
    }

    private static string Css(OxyColor colour)
    {
        var opaque = OxyColor.FromRgb(colour.R, colour.G, colour.B);
        return Palette.CssNames.TryGetValue(opaque, out string? name)
            ? $"var(--{name})"
            : $"#{colour.R:x2}{colour.G:x2}{colour.B:x2}";
    }

    private static string Opacity(string what, OxyColor colour) =>
        colour.A == 255 ? "" : $";{what}-opacity:{N(colour.A / 255.0)}";

    private static string N(double number) => Math.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
