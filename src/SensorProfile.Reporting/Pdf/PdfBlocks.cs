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
    private const double Lowest = 0.6; // of its height, for a plot that ends a page rather than begin another

    /// <summary>Writes the blocks one below the other.</summary>
    public static void Write(PdfPages pages, IReadOnlyList<Block> blocks)
    {
        for (int i = 0; i < blocks.Count; i++)
        {
            if (blocks[i] is SubheadingBlock && i + 1 < blocks.Count)
                // a heading stays with what follows
                pages.Need(
                    40
                        + (
                            blocks[i + 1] is FigureBlock figure
                                ? LeastHeight(pages, figure)
                                : Start(pages, blocks[i + 1])
                        )
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
                FigureBlock figure => FigureHeight(pages, figure) + CaptionHeight(pages, figure),
                _ => 150,
            }
        );

    /// <summary>Least height of a section's beginning: all up to the first figure or table, a figure as low as it may be.</summary>
    public static double LeastHeight(PdfPages pages, IReadOnlyList<Block> blocks)
    {
        Block[] before = [.. blocks.TakeWhile(block => block is not (FigureBlock or TableBlock))];
        double height = Height(pages, before);
        return blocks.ElementAtOrDefault(before.Length) switch
        {
            FigureBlock figure => height + LeastHeight(pages, figure),
            TableBlock table => height + Start(pages, table),
            _ => height,
        };
    }

    private static double LeastHeight(PdfPages pages, FigureBlock figure) =>
        Math.Min(
            FigureHeight(pages, figure) * (figure.KeepsShape ? 1 : Lowest) + CaptionHeight(pages, figure),
            pages.FullRoom - 40
        );

    /// <summary>Room in which a block may begin; what does not fit goes on overleaf.</summary>
    private static double Start(PdfPages pages, Block block) => Math.Min(Height(pages, [block]), 90);

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

    private static double CaptionHeight(PdfPages pages, FigureBlock figure) =>
        PdfPages.Height(Caption(figure), pages.Width, Small, false) + 4;

    private static double FigureHeight(PdfPages pages, FigureBlock figure)
    {
        double width = PanelWidth(pages, figure);
        return figure.Panels.Chunk(figure.Columns).Sum(row => row.Max(panel => panel.Aspect) * width);
    }

    private static double PanelWidth(PdfPages pages, FigureBlock figure) =>
        (pages.Width - (figure.Columns - 1) * Gap) / figure.Columns;

    private static void WriteFigure(PdfPages pages, FigureBlock figure)
    {
        double captionHeight = CaptionHeight(pages, figure),
            panels = FigureHeight(pages, figure),
            fitting = Math.Min((pages.Room - captionHeight) / panels, 1);
        bool lowered = !figure.KeepsShape && fitting is >= Lowest and < 1;
        if (!lowered && panels + captionHeight <= pages.FullRoom)
            pages.Need(panels + captionHeight);
        double width = PanelWidth(pages, figure);
        foreach (Panel[] row in figure.Panels.Chunk(figure.Columns))
        {
            double height = row.Max(panel => panel.Aspect) * width * (lowered ? fitting : 1);
            if (!lowered)
                pages.Need(height);
            for (int i = 0; i < row.Length; i++)
                Draw(pages, row[i].Model, new OxyRect(pages.Margin + i * (width + Gap), pages.Y, width, height));
            pages.Y += height;
        }
        pages.Y += 4;
        pages.Paragraph(Caption(figure), pages.Margin, pages.Width, Small, false, Palette.Faint);
    }

    private static void Draw(PdfPages pages, PlotModel plot, OxyRect area)
    {
        var context = new PlotCanvas(pages.Canvas);
        ((IPlotModel)plot).Update(true);
        ((IPlotModel)plot).Render(context, area);
    }
}
