using Markdig;
using Markdig.Syntax;

namespace SensorProfile.Reporting.Handbook;

/// <summary>The Markdown of the handbook: CommonMark with tables and headings that can be linked to, no HTML.</summary>
internal static class HandbookMarkdown
{
    public static MarkdownPipeline Pipeline { get; } =
        new MarkdownPipelineBuilder().UsePipeTables().UseAutoIdentifiers().DisableHtml().Build();

    public static MarkdownDocument Parse(HandbookTopic topic) => Markdown.Parse(topic.Markdown, Pipeline);

    /// <summary>
    /// Where a link leads: a topic of the handbook with what follows a #, an address of the web, or a file of the
    /// project, which a reader of the program need not have.
    /// </summary>
    public static (string? Topic, string Fragment, string? Web) Target(string url)
    {
        if (url.StartsWith("https://", StringComparison.Ordinal))
            return (null, "", url);
        string[] parts = url.Split('#', 2);
        string fragment = parts.Length > 1 ? "#" + parts[1] : "",
            file = parts[0];
        if (file.Length == 0)
            return ("", fragment, null);
        string name = Path.GetFileNameWithoutExtension(file);
        return file == "README.md" ? (HandbookTopics.Contents.Name, fragment, null)
            : file == name + ".md" && HandbookTopics.Find(name) is not null ? (name, fragment, null)
            : (null, "", null);
    }
}
