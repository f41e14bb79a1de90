using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Pdf;
using SkiaSharp;

namespace SensorProfile.Reporting.Tests.Pdf;

public sealed class PdfTableTests : IDisposable
{
    private readonly string file = Path.Combine(Directory.CreateTempSubdirectory("table-").FullName, "t.pdf");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);

    [ToolFact("pdftotext")]
    public void TheLastRowNeverStandsAloneOnAPage()
    {
        // Row counts on both sides of where a page ends, whatever the height of a row (some 50 fit).
        var perPage = new List<int[]>();
        for (int rows = 40; rows < 65; rows++)
        {
            int[] found = RowsOnPages(rows);
            Assert.Equal(rows, found.Sum());
            perPage.Add(found);
        }
        Assert.Contains(perPage, pages => pages.Length == 1);
        Assert.Contains(perPage, pages => pages is [_, 2]);
        Assert.All(perPage, pages => Assert.DoesNotContain(1, pages));
    }

    private int[] RowsOnPages(int rows)
    {
        using (SKDocument document = SKDocument.CreatePdf(file))
        {
            var pages = new PdfPages(document, "footer", PageSize.A4);
            pages.NewPage();
            PdfTable.Write(
                pages,
                new TableBlock(
                    ["Head"],
                    [.. Enumerable.Range(0, rows).Select(i => (IReadOnlyList<string>)["row"])],
                    [1.0]
                )
            );
            pages.EndPage();
            document.Close();
        }
        return
        [
            .. Tool.Run("pdftotext", "-layout", file, "-")
                .Split('\f')
                .Select(page => page.Split('\n').Count(line => line.Trim() == "row"))
                .Where(n => n > 0),
        ];
    }
}
