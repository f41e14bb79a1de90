using OxyPlot;

namespace SensorProfile.Reporting.Drawing;

/// <summary>How text is measured and placed, the same for every format of the report.</summary>
internal static class PlotText
{
    // height of capitals and figures over the baseline, share of the size (DejaVu Sans: 0.73)
    private const double Ascent = 0.76;
    private const double LineSpacing = 1.2;

    /// <summary>The lines of a text.</summary>
    public static string[] Lines(string text) => text.Split('\n');

    /// <summary>Distance between baselines.</summary>
    public static double LineHeight(double size) => size * LineSpacing;

    /// <summary>Size of a text of one or more lines.</summary>
    public static OxySize Measure(string? text, double size, double weight)
    {
        if (string.IsNullOrEmpty(text))
            return OxySize.Empty;
        string[] lines = Lines(text);
        return new OxySize(
            lines.Max(line => ReportFonts.Width(line, size, weight >= ReportFonts.BoldWeight)),
            lines.Length * LineHeight(size)
        );
    }

    /// <summary>Share of the width that lies left of the anchor.</summary>
    public static double Share(HorizontalAlignment alignment) =>
        alignment switch
        {
            HorizontalAlignment.Center => 0.5,
            HorizontalAlignment.Right => 1,
            _ => 0,
        };

    /// <summary>First baseline relative to the anchor, down positive.</summary>
    public static double FirstBaseline(int lines, double size, VerticalAlignment alignment)
    {
        double height = lines * LineHeight(size);
        double top = alignment switch
        {
            VerticalAlignment.Middle => -height / 2,
            VerticalAlignment.Bottom => -height,
            _ => 0,
        };
        return top + (LineHeight(size) - size * Ascent) / 2 + size * Ascent;
    }
}
