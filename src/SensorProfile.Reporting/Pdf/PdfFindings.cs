using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Pdf;

/// <summary>Findings, each with its weight in words and colour.</summary>
internal static class PdfFindings
{
    private const double Size = 9;
    private const double Small = 7.5;
    private const double Label = 62;
    private const double Width = PdfPages.Width - Label;

    /// <summary>Writes the findings.</summary>
    public static void Write(PdfPages pages, FindingsBlock block)
    {
        foreach (Finding finding in block.Findings)
        {
            pages.Need(Height(finding));
            pages.FillRectangle(PdfPages.Margin, pages.Y + 2, 3, Size, VerdictLook.Colour(finding.Severity));
            pages.Text(
                VerdictLook.Words(finding.Severity),
                PdfPages.Margin + 8,
                pages.Y + Size,
                Size - 0.5,
                true,
                Palette.Ink
            );
            pages.Paragraph(finding.Message, PdfPages.Margin + Label, Width, Size, false, Palette.Ink);
            pages.Paragraph(FindingText.Source(finding), PdfPages.Margin + Label, Width, Small, false, Palette.Faint);
            pages.Y += 5;
        }
    }

    /// <summary>Height of one finding.</summary>
    public static double Height(Finding finding) =>
        PdfPages.Height(finding.Message, Width, Size, false)
        + PdfPages.Height(FindingText.Source(finding), Width, Small, false)
        + 5;
}
