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

    /// <summary>Writes the findings.</summary>
    public static void Write(PdfPages pages, FindingsBlock block)
    {
        foreach (Finding finding in block.Findings)
        {
            pages.Need(Height(pages, finding));
            pages.FillRectangle(pages.Margin, pages.Y + 2, 3, Size, VerdictLook.Colour(finding.Severity));
            pages.Text(
                VerdictLook.Words(finding.Severity),
                pages.Margin + 8,
                pages.Y + Size,
                Size - 0.5,
                true,
                Palette.Ink
            );
            pages.Paragraph(finding.Message, pages.Margin + Label, pages.Width - Label, Size, false, Palette.Ink);
            pages.Paragraph(
                FindingText.Source(finding),
                pages.Margin + Label,
                pages.Width - Label,
                Small,
                false,
                Palette.Faint
            );
            pages.Y += 5;
        }
    }

    /// <summary>Height of one finding.</summary>
    public static double Height(PdfPages pages, Finding finding) =>
        PdfPages.Height(finding.Message, pages.Width - Label, Size, false)
        + PdfPages.Height(FindingText.Source(finding), pages.Width - Label, Small, false)
        + 5;
}
