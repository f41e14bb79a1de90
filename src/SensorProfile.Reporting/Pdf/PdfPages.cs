using OxyPlot;
using SensorProfile.Reporting.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Pdf;

/// <summary>Pages that are filled from top to bottom.</summary>
/// <param name="document">The document that is written.</param>
/// <param name="footer">Words at the foot of every page.</param>
/// <param name="size">Size of the pages.</param>
internal sealed class PdfPages(SKDocument document, string footer, PageSize size)
{
    private SKCanvas? _canvas;
    private int _page;

    /// <summary>Left and right margin.</summary>
    public double Margin => size.Margin;

    /// <summary>Width of the text.</summary>
    public double Width => size.Width - 2 * Margin;

    private double Top => Margin - 2;

    private double Bottom => size.Height - Margin - 2;

    /// <summary>Where the next block begins, from the top of the page.</summary>
    public double Y { get; set; }

    /// <summary>Room that is left on this page.</summary>
    public double Room => Bottom - Y;

    /// <summary>The page that is being filled.</summary>
    public SKCanvas Canvas => _canvas ?? throw new InvalidOperationException("No page has been begun.");

    /// <summary>Room on an empty page.</summary>
    public double FullRoom => Bottom - Top;

    /// <summary>Ends the page and begins another.</summary>
    public void NewPage()
    {
        EndPage();
        _canvas = document.BeginPage((float)size.Width, (float)size.Height);
        _page++;
        Y = Top;
    }

    /// <summary>
    /// Begins a new page when a block of this height does not fit; a block taller than a page stays where it is.
    /// </summary>
    public void Need(double height)
    {
        if (_canvas is null || (height > Room && Room < FullRoom - 1))
            NewPage();
    }

    /// <summary>Ends the last page.</summary>
    public void EndPage()
    {
        if (_canvas is null)
            return;
        FillRectangle(Margin, Bottom + 6, Width, 0.6, Palette.Grid);
        Text(footer, Margin, Bottom + 19, 7.5, false, Palette.Faint);
        string number = QuantityText.Count(_page);
        Text(
            number,
            size.Width - Margin - ReportFonts.Width(number, 7.5, false),
            Bottom + 19,
            7.5,
            false,
            Palette.Faint
        );
        document.EndPage();
        _canvas = null;
    }

    /// <summary>Writes one line; y is the baseline.</summary>
    public void Text(string text, double x, double y, double size, bool bold, OxyColor colour)
    {
        if (text.Length == 0)
            return;
        using SKFont font = ReportFonts.Font(size, bold);
        using var paint = new SKPaint
        {
            Color = new SKColor(colour.R, colour.G, colour.B, colour.A),
            IsAntialias = true,
        };
        Canvas.DrawText(text, (float)x, (float)y, SKTextAlign.Left, font, paint);
    }

    /// <summary>Writes wrapped lines from the current position and moves below them.</summary>
    public void Paragraph(string text, double x, double width, double size, bool bold, OxyColor colour)
    {
        foreach (string line in TextWrap.Lines(text, size, bold, width))
        {
            Need(LineHeight(size));
            Text(line, x, Y + size, size, bold, colour);
            Y += LineHeight(size);
        }
    }

    /// <summary>Height of wrapped lines.</summary>
    public static double Height(string text, double width, double size, bool bold) =>
        TextWrap.Lines(text, size, bold, width).Count * LineHeight(size);

    /// <summary>Line spacing of a paragraph.</summary>
    public static double LineHeight(double size) => size * 1.42;

    /// <summary>Fills a rectangle.</summary>
    public void FillRectangle(double x, double y, double width, double height, OxyColor colour)
    {
        using var paint = new SKPaint
        {
            Color = new SKColor(colour.R, colour.G, colour.B, colour.A),
            IsAntialias = true,
        };
        Canvas.DrawRect((float)x, (float)y, (float)width, (float)height, paint);
    }
}
