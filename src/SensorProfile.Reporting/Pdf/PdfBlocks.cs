using OxyPlot;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Pdf;

/// <summary>Lays the blocks of a section onto pages.</summary>
internal static class PdfBlocks
{
    private const double Body = 9;
    private const double Small = 8;
    private const double Gap = 10;
    private const double Indent = 12;

    /// <summary>Writes the blocks one below the other.</summary>
    public static void Write(PdfPages pages, IReadOnlyList<Block> blocks)
    {
        for (int i = 0; i < blocks.Count; i++)
        {
            if (blocks[i] is SubheadingBlock && i + 1 < blocks.Count)
                // a heading stays with what follows
                pages.Need(
                    40 + Height(pages, [blocks[i + 1]], blocks[i + 1] is FigureBlock ? pages.FullRoom - 40 : 90)
                );
            Write(pages, blocks[i]);
            pages.Y += Gap;
        }
    }

    /// <summary>Height of the blocks, near enough to decide whether they fit.</summary>
    public static double Height(PdfPages pages, IReadOnlyList<Block> blocks) =>
        blocks.Sum(block =>
            Gap
            + block switch
            {
                TextBlock text => PdfPages.Height(text.Text, pages.Width, Body, false),
                SubheadingBlock => 18,
                ListBlock list => list.Items.Sum(item => PdfPages.Height(item, pages.Width - Indent, Body, false) + 2),
                FindingsBlock findings => findings.Findings.Sum(finding => PdfFindings.Height(pages, finding)),
                TableBlock table => PdfTable.Height(table, pages.Width),
                FigureBlock figure => FigureHeight(pages, figure)
                    + 4
                    + PdfPages.Height(Caption(figure), pages.Width, Small, false),
                _ => 150,
            }
        );

    private static double Height(PdfPages pages, IReadOnlyList<Block> blocks, double most) =>
        Math.Min(Height(pages, blocks), most);

    private static void Write(PdfPages pages, Block block)
    {
        switch (block)
        {
            case AnswerBlock answer:
                PdfAnswer.Write(pages, answer);
                break;
            case KeyFiguresBlock figures:
                PdfAnswer.Write(pages, figures);
                break;
            case TextBlock text:
                pages.Paragraph(text.Text, pages.Margin, pages.Width, Body, false, Palette.Ink);
                break;
            case SubheadingBlock heading:
                pages.Y += 4;
                pages.Paragraph(heading.Text, pages.Margin, pages.Width, 10.5, true, Palette.Ink);
                pages.Y -= Gap - 3;
                break;
            case ListBlock list:
                WriteList(pages, list);
                break;
            case FindingsBlock findings:
                PdfFindings.Write(pages, findings);
                break;
            case TableBlock table:
                PdfTable.Write(pages, table);
                break;
            case FigureBlock figure:
                WriteFigure(pages, figure);
                break;
            default:
                throw new InvalidOperationException(
                    $"A report holds a {block.GetType().Name}, which the PDF cannot show."
                );
        }
    }

    private static void WriteList(PdfPages pages, ListBlock list)
    {
        foreach (string item in list.Items)
        {
            pages.Need(PdfPages.Height(item, pages.Width - Indent, Body, false));
            pages.Text("–", pages.Margin, pages.Y + Body, Body, false, Palette.Faint);
            pages.Paragraph(item, pages.Margin + Indent, pages.Width - Indent, Body, false, Palette.Ink);
            pages.Y += 2;
        }
    }

    private static string Caption(FigureBlock figure) =>
        $"Figure {figure.Number}. {figure.Caption}{(figure.Table is null ? "" : $" Numbers: {figure.Table}.")}";

    private static double FigureHeight(PdfPages pages, FigureBlock figure)
    {
        double width = PanelWidth(pages, figure);
        return figure.Panels.Chunk(figure.Columns).Sum(row => row.Max(panel => panel.Aspect) * width);
    }

    private static double PanelWidth(PdfPages pages, FigureBlock figure) =>
        (pages.Width - (figure.Columns - 1) * Gap) / figure.Columns;

    private static void WriteFigure(PdfPages pages, FigureBlock figure)
    {
        string caption = Caption(figure);
        double captionHeight = PdfPages.Height(caption, pages.Width, Small, false) + 4;
        double whole = FigureHeight(pages, figure) + captionHeight;
        if (whole <= pages.FullRoom)
            pages.Need(whole);
        double width = PanelWidth(pages, figure);
        foreach (Panel[] row in figure.Panels.Chunk(figure.Columns))
        {
            double height = row.Max(panel => panel.Aspect) * width;
            pages.Need(height);
            for (int i = 0; i < row.Length; i++)
                Draw(pages, row[i].Model, new OxyRect(pages.Margin + i * (width + Gap), pages.Y, width, height));
            pages.Y += height;
        }
        pages.Y += 4;
        pages.Paragraph(caption, pages.Margin, pages.Width, Small, false, Palette.Faint);
    }

    private static void Draw(PdfPages pages, PlotModel plot, OxyRect area)
    {
        var context = new PlotCanvas(pages.Canvas);
        ((IPlotModel)plot).Update(true);
        ((IPlotModel)plot).Render(context, area);
    }
}
