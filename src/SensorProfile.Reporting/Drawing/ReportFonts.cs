using System.Reflection;
using SkiaSharp;

namespace SensorProfile.Reporting.Drawing;

/// <summary>The fonts that ship inside the program, so that a report looks the same on a machine without any.</summary>
internal static class ReportFonts
{
    /// <summary>Family name, also asked for in the HTML page.</summary>
    public const string Family = "DejaVu Sans";

    /// <summary>Weight of bold text as OxyPlot counts it.</summary>
    public const double BoldWeight = 700;

    private static readonly SKTypeface _regular = Load("DejaVuSans.ttf");
    private static readonly SKTypeface _bold = Load("DejaVuSans-Bold.ttf");

    /// <summary>The font of a size and weight.</summary>
    /// <param name="size">Size in points.</param>
    /// <param name="bold">Bold or regular.</param>
    public static SKFont Font(double size, bool bold) =>
        new(bold ? _bold : _regular, (float)size)
        {
            Subpixel = true, // widths in proportion to the size, the same on every machine
            Hinting = SKFontHinting.None,
            LinearMetrics = true,
        };

    /// <summary>Width of a line of text, points.</summary>
    public static double Width(string text, double size, bool bold)
    {
        using SKFont font = Font(size, bold);
        return Width(text, font);
    }

    /// <summary>Width of a line of text, points.</summary>
    public static double Width(string text, SKFont font) => font.MeasureText(font.Typeface.GetGlyphs(text));

    private static SKTypeface Load(string name)
    {
        using Stream stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream($"SensorProfile.Reporting.Fonts.{name}")
            ?? throw new InvalidOperationException($"The program was built without its font {name}.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException($"The font {name} cannot be read.");
    }
}
