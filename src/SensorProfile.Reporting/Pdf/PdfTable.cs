using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Pdf;

/// <summary>
/// Draws tables: a head, fine rules between the rows, right-aligned numbers; the head is repeated on a new page.
/// </summary>
internal static class PdfTable
{
    private const double Size = 8;
    private const double Line = Size * 1.3;
    private const double RowPadding = 4.4;
    private const double CellGap = 8;

    /// <summary>Writes the table.</summary>
    public static void Write(PdfPages pages, TableBlock table)
    {
        double width = pages.Width;
        IReadOnlyList<IReadOnlyList<string>> head = Wrap(table, table.Header, bold: true, width);
        pages.Need(RowHeight(head) + Line + RowPadding);
        WriteRow(pages, table, head, head: true);
        IReadOnlyList<IReadOnlyList<string>>[] rows =
        [
            .. table.Rows.Select(row => Wrap(table, row, bold: false, width)),
        ];
        for (int i = 0; i < rows.Length; i++)
        {
            bool lastButOne = i > 0 && i == rows.Length - 2; // keeps the last row from standing alone on a page
            if (RowHeight(rows[i]) + (lastButOne ? RowHeight(rows[^1]) : 0) > pages.Room)
            {
                pages.NewPage();
                WriteRow(pages, table, head, head: true);
            }
            WriteRow(pages, table, rows[i], head: false);
        }
    }

    /// <summary>Height of the table.</summary>
    public static double Height(TableBlock table, double width) =>
        RowHeight(Wrap(table, table.Header, bold: true, width))
        + table.Rows.Sum(row => RowHeight(Wrap(table, row, bold: false, width)));

    /// <summary>The text of each cell of a row, wrapped to the width of its column.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Wrap(
        TableBlock table,
        IReadOnlyList<string> cells,
        bool bold,
        double width
    ) => [.. cells.Select((cell, column) => TextWrap.Lines(cell, Size, bold, table.Widths[column] * width - CellGap))];

    private static double RowHeight(IReadOnlyList<IReadOnlyList<string>> cells) =>
        cells.Max(lines => lines.Count) * Line + RowPadding;

    private static void WriteRow(
        PdfPages pages,
        TableBlock table,
        IReadOnlyList<IReadOnlyList<string>> cells,
        bool head
    )
    {
        double x = pages.Margin,
            height = RowHeight(cells);
        for (int column = 0; column < cells.Count; column++)
        {
            double width = table.Widths[column] * pages.Width - CellGap;
            double baseline = pages.Y + Size + 1;
            foreach (string line in cells[column])
            {
                double left = table.IsNumber(column) ? x + width - ReportFonts.Width(line, Size, head) : x;
                pages.Text(line, left, baseline, Size, head, Palette.Ink);
                baseline += Line;
            }
            x += table.Widths[column] * pages.Width;
        }
        pages.Y += height;
        pages.FillRectangle(
            pages.Margin,
            pages.Y - 2.2,
            pages.Width,
            head ? 0.9 : 0.4,
            head ? Palette.Faint : Palette.Grid
        );
    }
}
