using System.Globalization;
using System.Reflection;
using System.Text;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Html;

/// <summary>
/// A report as one self-contained web page: no script, no font, no picture from elsewhere; for light and dark displays,
/// wide and narrow ones.
/// </summary>
internal static class HtmlReport
{
    /// <summary>The page.</summary>
    public static string Text(ReportDocument report)
    {
        string date = report.CreatedUtc.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var page = new StringBuilder();
        AppendHead(page, $"{report.Title}: {report.Kind} of {date}", "");
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            <main>
            <header>
            <h1>{Markup.Escape(report.Title)}</h1>
            <p class="faint">{Markup.Escape(report.Subtitle)}</p>
            </header>

            """
        );
        AppendContents(page, report);
        for (int i = 0; i < report.Sections.Count; i++)
            AppendSection(page, report.Sections[i], i);
        page.Append("</main>\n</body>\n</html>\n");
        return page.ToString().ReplaceLineEndings("\n");
    }

    /// <summary>Any content in the same look.</summary>
    /// <param name="title">Title of the page.</param>
    /// <param name="style">On top of the report's style sheet.</param>
    /// <param name="content">Markup of what stands in it.</param>
    public static string Plain(string title, string style, string content)
    {
        var page = new StringBuilder();
        AppendHead(page, title, style);
        page.Append("<main class=\"handbook\">\n").Append(content).Append("</main>\n</body>\n</html>\n");
        return page.ToString().ReplaceLineEndings("\n");
    }

    private static void AppendHead(StringBuilder page, string title, string style) =>
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8"/>
            <meta name="viewport" content="width=device-width, initial-scale=1"/>
            <meta name="color-scheme" content="light dark"/>
            <title>{Markup.Escape(title)}</title>
            <style>
            {StyleSheet()}{style}</style>
            </head>
            <body>

            """
        );

    private static void AppendContents(StringBuilder page, ReportDocument report)
    {
        page.Append("<nav aria-label=\"Contents\">\n");
        for (int i = 0; i < report.Sections.Count; i++)
        {
            if (report.Sections[i].Title is { } title)
            {
                string context = report.Sections[i].Context is { } words ? $" ({Markup.Escape(words)})" : "";
                page.Append(CultureInfo.InvariantCulture, $"<a href=\"#s{i}\">{Markup.Escape(title)}{context}</a>\n");
            }
        }
        page.Append("</nav>\n");
    }

    private static void AppendSection(StringBuilder page, ReportSection section, int index)
    {
        page.Append(CultureInfo.InvariantCulture, $"<section id=\"s{index}\">\n");
        if (section.Title is not null)
            page.Append(CultureInfo.InvariantCulture, $"<h2>{Markup.Escape(section.Title)}</h2>\n");
        if (section.Context is not null)
            page.Append(CultureInfo.InvariantCulture, $"<p class=\"faint\">{Markup.Escape(section.Context)}</p>\n");
        foreach (Block block in section.Blocks)
            HtmlBlocks.Append(page, block);
        page.Append("</section>\n");
    }

    internal static string StyleSheet()
    {
        using Stream stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream("SensorProfile.Reporting.Html.report.css")
            ?? throw new InvalidOperationException("The program was built without its style sheet.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
