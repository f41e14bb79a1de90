using OxyPlot;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Pdf;

/// <summary>The answer and the key figures of the first page.</summary>
internal static class PdfAnswer
{
    private const double Padding = 12;
    private const double TileHeight = 50;
    private const double TileGap = 8;
    private const int TilesInARow = 3;

    /// <summary>Writes the answer in a box.</summary>
    public static void Write(PdfPages pages, AnswerBlock answer)
    {
        double width = pages.Width - 2 * Padding - 4;
        double height =
            2 * Padding
            + 14
            + PdfPages.Height(answer.Sentence, width, 12, true)
            + 5
            + PdfPages.Height(answer.Reason, width, 9, false);
        OxyColor colour = VerdictLook.Colour(answer.Verdict);
        pages.Need(height);
        pages.FillRectangle(pages.Margin, pages.Y, pages.Width, height, Palette.Shade);
        pages.FillRectangle(pages.Margin, pages.Y, 4, height, colour);
        double x = pages.Margin + Padding + 4,
            bottom = pages.Y + height;
        pages.Y += Padding;
        pages.Text(VerdictLook.Words(answer.Verdict).ToUpperInvariant(), x, pages.Y + 7, 7.5, true, colour);
        pages.Y += 14;
        pages.Paragraph(answer.Sentence, x, width, 12, true, Palette.Ink);
        pages.Y += 5;
        pages.Paragraph(answer.Reason, x, width, 9, false, Palette.Ink);
        pages.Y = bottom;
    }

    /// <summary>Writes the key figures as tiles, three in a row.</summary>
    public static void Write(PdfPages pages, KeyFiguresBlock block)
    {
        double width = (pages.Width - (TilesInARow - 1) * TileGap) / TilesInARow;
        foreach (KeyFigure[] row in block.Figures.Chunk(TilesInARow))
        {
            pages.Need(TileHeight);
            for (int i = 0; i < row.Length; i++)
                Tile(pages, row[i], pages.Margin + i * (width + TileGap), width);
            pages.Y += TileHeight + TileGap;
        }
        pages.Y -= TileGap;
    }

    private static void Tile(PdfPages pages, KeyFigure figure, double x, double width)
    {
        bool measured = figure.Value != QuantityText.NotMeasured;
        pages.FillRectangle(x, pages.Y, width, 1.4, measured ? Palette.Blue : Palette.Grid);
        pages.Text(figure.Label, x, pages.Y + 14, 8, false, Palette.Faint);
        double size = 15,
            fitting = ReportFonts.Width(figure.Value, size, true);
        if (fitting > width - 10)
            size *= (width - 10) / fitting;
        pages.Text(figure.Value, x, pages.Y + 32, size, true, measured ? Palette.Ink : Palette.Faint);
        pages.Text(figure.Unit, x, pages.Y + 45, 8.5, false, Palette.Faint);
    }
}
