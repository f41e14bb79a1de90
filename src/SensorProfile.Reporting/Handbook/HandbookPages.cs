using System.Reflection;
using System.Text;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Handbook;

/// <summary>The handbook as web pages that need nothing else, in the look of the report.</summary>
internal static class HandbookPages
{
    private const string StyleName = "SensorProfile.Reporting.Handbook.handbook.css";

    /// <summary>What the handbook needs on top of the report's style sheet.</summary>
    public static string StyleSheet()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(StyleName)
            ?? throw new InvalidOperationException("The program was built without the handbook's style sheet.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    /// <summary>Writes every topic and <c>index.html</c>; files of the same names are replaced.</summary>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static void Write(string folder)
    {
        var files = new SortedDictionary<string, Action<Stream>>(StringComparer.Ordinal);
        foreach (HandbookTopic topic in HandbookTopics.All.Prepend(HandbookTopics.Contents))
            files[Address(topic.Name)] = stream => stream.Write(Encoding.UTF8.GetBytes(Page(topic)));
        StagedFiles.Write(folder, files);
    }

    /// <summary>One page.</summary>
    public static string Page(HandbookTopic topic)
    {
        string links = string.Concat(
            HandbookTopics
                .All.Prepend(HandbookTopics.Contents)
                .Select(other =>
                    $"<a href=\"{Address(other.Name)}\"{(other.Name == topic.Name ? " aria-current=\"page\"" : "")}>"
                    + $"{Markup.Escape(other.Title)}</a>\n"
                )
        );
        string nav = $"<nav aria-label=\"Handbook\">\n{links}</nav>\n";
        return HtmlReport.Plain(topic.Title, StyleSheet(), nav + HandbookHtml.Body(topic, Address));
    }

    private static string Address(string topic) =>
        topic == HandbookTopics.Contents.Name ? "index.html" : topic + ".html";
}
