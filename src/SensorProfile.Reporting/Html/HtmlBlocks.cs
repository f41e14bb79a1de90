using System.Globalization;
using System.Text;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Html;

/// <summary>Writes the blocks of a section as markup.</summary>
internal static class HtmlBlocks
{
    /// <summary>Appends one block.</summary>
    public static void Append(StringBuilder page, Block block)
    {
        switch (block)
        {
            case AnswerBlock answer:
                WriteLine(
                    page,
                    $"<div class=\"answer {VerdictClass(answer.Verdict)}\"><p "
                        + $"class=\"verdict\">{VerdictLook.Words(answer.Verdict)}</p><p "
                        + $"class=\"sentence\">{Markup.Escape(answer.Sentence)}</p><p>{Markup.Escape(answer.Reason)}</p></div>"
                );
                break;
            case KeyFiguresBlock figures:
                AppendFigures(page, figures);
                break;
            case TextBlock text:
                WriteLine(page, $"<p>{Markup.Escape(text.Text)}</p>");
                break;
            case SubheadingBlock heading:
                WriteLine(page, $"<h3>{Markup.Escape(heading.Text)}</h3>");
                break;
            case ListBlock list:
                WriteLine(
                    page,
                    $"<ul>{string.Concat(list.Items.Select(item => $"<li>{Markup.Escape(item)}</li>"))}</ul>"
                );
                break;
            case FindingsBlock findings:
                AppendFindings(page, findings);
                break;
            case TableBlock table:
                AppendTable(page, table);
                break;
            case FigureBlock figure:
                AppendFigure(page, figure);
                break;
            default:
                throw new InvalidOperationException(
                    $"A report holds a {block.GetType().Name}, which the page cannot show."
                );
        }
    }

    private static void AppendFigures(StringBuilder page, KeyFiguresBlock block)
    {
        page.Append("<dl class=\"key\">\n");
        foreach (KeyFigure figure in block.Figures)
        {
            string missing = figure.Value == QuantityText.NotMeasured ? " class=\"missing\"" : "";
            WriteLine(
                page,
                $"<div{missing}><dt>{Markup.Escape(figure.Label)}</dt><dd><b>{Markup.Escape(figure.Value)}</b> "
                    + $"<span>{Markup.Escape(figure.Unit)}</span></dd></div>"
            );
        }
        page.Append("</dl>\n");
    }

    private static void AppendFindings(StringBuilder page, FindingsBlock block)
    {
        page.Append("<ul class=\"findings\">\n");
        foreach (Finding finding in block.Findings)
            WriteLine(
                page,
                "<li "
                    + $"class=\"{VerdictLook.Words(finding.Severity).ToLowerInvariant()}\"><b>{VerdictLook.Words(finding.Severity)}</b> "
                    + $"{Markup.Escape(finding.Message)} "
                    + $"<small>{Markup.Escape(FindingText.Source(finding))}</small></li>"
            );
        page.Append("</ul>\n");
    }

    private static void AppendTable(StringBuilder page, TableBlock table)
    {
        string Cell(string tag, string text, int column) =>
            $"<{tag}{(table.IsNumber(column) ? " class=\"n\"" : "")}>{Markup.Escape(text)}</{tag}>";
        // on a narrow screen the table scrolls on its own, from the keyboard too
        string name = string.Join(", ", table.Header.Where(text => text.Length > 0));
        page.Append("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"")
            .Append(Markup.Escape(name.Length > 0 ? $"Table: {name}" : "Table"))
            .Append("\"><table>\n<thead><tr>");
        page.AppendJoin("", table.Header.Select((text, column) => Cell("th", text, column)));
        page.Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<string> row in table.Rows)
            page.Append("<tr>")
                .AppendJoin("", row.Select((text, column) => Cell("td", text, column)))
                .Append("</tr>\n");
        page.Append("</tbody>\n</table></div>\n");
    }

    private static void AppendFigure(StringBuilder page, FigureBlock figure)
    {
        string caption = Markup.Escape(figure.Caption);
        WriteLine(page, $"<figure><div class=\"panels c{figure.Columns}\">");
        for (int i = 0; i < figure.Panels.Count; i++)
        {
            if (figure.KeepsShape)
            {
                page.Append(
                    SvgPlot.Text(
                        figure.Panels[i],
                        PicturePlot.DrawnWidth / figure.Columns,
                        1,
                        string.Create(CultureInfo.InvariantCulture, $"f{figure.Number}p{i}"),
                        "picture",
                        caption
                    )
                );
                continue;
            }
            // Drawn twice, so that the letters keep their size on a phone; the style sheet shows one of the two.
            string name = string.Create(CultureInfo.InvariantCulture, $"f{figure.Number}p{i}");
            page.Append(
                SvgPlot.Text(figure.Panels[i], figure.Columns == 1 ? 640 : 315, 1, name + "w", "wide", caption)
            );
            page.Append(
                SvgPlot.Text(figure.Panels[i], 300, figure.Columns == 1 ? 1.5 : 1.15, name + "n", "narrow", caption)
            );
        }
        string numbers = figure.Table is null ? "" : $" Numbers: <code>{Markup.Escape(figure.Table)}</code>.";
        WriteLine(page, $"</div><figcaption>Figure {figure.Number}. {caption}{numbers}</figcaption></figure>");
    }

    private static string VerdictClass(Verdict verdict) =>
        verdict switch
        {
            Verdict.Answered => "answered",
            Verdict.Keep or Verdict.Unchanged => "keep",
            Verdict.KeepWithCare or Verdict.Changed or Verdict.Retake => "care",
            _ => "unknown",
        };

    private static void WriteLine(StringBuilder page, string markup) => page.Append(markup).Append('\n');
}
