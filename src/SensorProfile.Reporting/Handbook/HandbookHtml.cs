using Markdig.Renderers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace SensorProfile.Reporting.Handbook;

/// <summary>A topic of the handbook as markup.</summary>
internal static class HandbookHtml
{
    /// <summary>What stands between the heading of a page and its end, heading included.</summary>
    /// <param name="topic">The topic.</param>
    /// <param name="address">Address of a topic: "frames.html".</param>
    public static string Body(HandbookTopic topic, Func<string, string> address)
    {
        MarkdownDocument document = HandbookMarkdown.Parse(topic);
        foreach (LinkInline link in document.Descendants<LinkInline>().ToArray())
            Lead(link, topic, address);
        using var text = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(text);
        HandbookMarkdown.Pipeline.Setup(renderer);
        _ = renderer.Render(document);
        // what is wider than the page scrolls by itself, from the keyboard too
        return text.ToString()
            .Replace(
                "<table>",
                "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Table\"><table>",
                StringComparison.Ordinal
            )
            .Replace("</table>", "</table></div>", StringComparison.Ordinal)
            .Replace("<pre>", "<pre tabindex=\"0\">", StringComparison.Ordinal);
    }

    private static void Lead(LinkInline link, HandbookTopic topic, Func<string, string> address)
    {
        (string? name, string fragment, string? web) = HandbookMarkdown.Target(link.Url ?? "");
        if (web is not null)
            return;
        if (name is not null)
        {
            link.Url = address(name.Length > 0 ? name : topic.Name) + fragment;
            return;
        }
        // a file of the project: its name says what it is
        foreach (Inline part in link.ToArray())
        {
            part.Remove();
            link.InsertBefore(part);
        }
        link.Remove();
    }
}
