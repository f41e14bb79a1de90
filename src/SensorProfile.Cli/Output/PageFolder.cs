using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Output;

/// <summary>The folder that <c>--page</c> names, for an answer as a page to keep.</summary>
internal sealed class PageFolder : IDisposable
{
    private readonly string given;
    private readonly OutputFolder output;

    private PageFolder(string given, OutputFolder output) => (this.given, this.output) = (given, output);

    /// <summary>Checks the folder before any work; null when no page was asked for.</summary>
    public static PageFolder? Begin(string? folder, bool overwrite, params IReadOnlyList<string> inputs) =>
        folder is null ? null : new PageFolder(folder, OutputFolder.Begin(folder, overwrite, inputs, "--page"));

    /// <summary>Writes the page when one was asked for, and adds its place to the reply.</summary>
    public static AnswerDocument Complete(PageFolder? page, AnswerDocument reply, Action<string> write)
    {
        if (page is null)
            return reply;
        page.output.Write(write);
        string[] names =
        [
            .. Directory
                .EnumerateFiles(page.output.WorkPath)
                .Select(file => Path.GetFileName(file))
                .Order(StringComparer.Ordinal),
        ];
        page.output.Complete();
        return reply with
        {
            Lines =
            [
                .. reply.Lines,
                .. names.Select(name => $"{Word(name) + ":", -10}{Path.Combine(page.given, name)}"),
            ],
        };
    }

    public void Dispose() => output.Dispose();

    private static string Word(string name) =>
        Path.GetExtension(name) switch
        {
            ".html" => "Page",
            ".pdf" => "To print",
            _ => "Numbers",
        };
}
