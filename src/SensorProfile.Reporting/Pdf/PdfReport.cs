using System.Globalization;
using System.Text;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Pdf;

/// <summary>
/// A report as PDF: text that can be selected and searched, the same bytes for the same profile.
/// </summary>
internal static class PdfReport
{
    private const double Heading = 46; // a section's title, its line and the room around them

    /// <summary>The content of the file.</summary>
    /// <param name="report">The report.</param>
    /// <param name="size">The paper; A4 when null.</param>
    /// <remarks>Made in memory, so that our own code, not the drawing library's, meets a full disk.</remarks>
    public static byte[] Bytes(ReportDocument report, PageSize? size = null)
    {
        using var stream = new MemoryStream();
        Write(report, stream, size ?? PageSize.A4);
        byte[] file = stream.ToArray();
        DatesInUtc(file);
        return file;
    }

    /// <summary>
    /// The drawing library writes the time as given, in UTC, but appends the machine's own offset; the same profile must
    /// give the same bytes in every time zone. The replacement has the same length, so no offset in the file moves.
    /// </summary>
    private static void DatesInUtc(Span<byte> file)
    {
        const int Digits = 14; // YYYYMMDDHHMMSS
        foreach (string key in (string[])["/CreationDate (D:", "/ModDate (D:"])
            if (file.IndexOf(Encoding.ASCII.GetBytes(key)) is >= 0 and var at)
                "+00'00'"u8.CopyTo(file[(at + key.Length + Digits)..]);
    }

    private static void Write(ReportDocument report, MemoryStream stream, PageSize size)
    {
        DateTime created = report.CreatedUtc.UtcDateTime;
        var metadata = new SKDocumentPdfMetadata
        {
            Title = $"{report.Title}: {report.Kind} of {created.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}",
            Subject = report.Subject,
            Creator = "sensorprofile",
            Creation = created,
            Modified = created,
            RasterDpi = 150,
            EncodingQuality = 101, // above 100 pictures are stored losslessly
        };
        using SKDocument document = SKDocument.CreatePdf(stream, metadata);
        var pages = new PdfPages(
            document,
            $"{report.Title} · {report.Kind} of {created.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}",
            size
        );
        pages.NewPage();
        WriteTitle(pages, report);
        for (int i = 0; i < report.Sections.Count; i++)
        {
            ReportSection section = report.Sections[i];
            if (i > 0 && (i == 1 || !FitsBelow(pages, section)))
                pages.NewPage();
            WriteHeading(pages, section);
            PdfBlocks.Write(pages, section.Blocks);
        }
        pages.EndPage();
        document.Close();
    }

    /// <summary>
    /// A section continues on the page where its heading and all up to its first figure or table fit there; else its heading
    /// would stand far above what it announces.
    /// </summary>
    private static bool FitsBelow(PdfPages pages, ReportSection section) =>
        Heading + PdfBlocks.LeastHeight(pages, section.Blocks) <= pages.Room;

    private static void WriteTitle(PdfPages pages, ReportDocument report)
    {
        pages.Paragraph(report.Title, pages.Margin, pages.Width, 24, true, Palette.Ink);
        pages.Y += 2;
        pages.Paragraph(report.Subtitle, pages.Margin, pages.Width, 8, false, Palette.Faint);
        pages.Y += 10;
    }

    private static void WriteHeading(PdfPages pages, ReportSection section)
    {
        if (section.Title is null)
            return;
        if (pages.Room < pages.FullRoom - 1)
            pages.Y += 14;
        pages.Paragraph(section.Title, pages.Margin, pages.Width, 15, true, Palette.Ink);
        if (section.Context is not null)
            pages.Paragraph(section.Context, pages.Margin, pages.Width, 8.5, false, Palette.Faint);
        pages.FillRectangle(pages.Margin, pages.Y + 3, pages.Width, 0.8, Palette.Grid);
        pages.Y += 12;
    }
}
