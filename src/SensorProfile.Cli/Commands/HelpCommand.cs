using System.ComponentModel;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Output;
using SensorProfile.Cli.Printing;
using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Handbook;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>help</c>: the handbook, in the terminal or as pages.</summary>
internal sealed class HelpCommand : Command<HelpCommand.Settings>
{
    private const int WidestText = 80; // longer lines are hard to read
    private const int FarthestEdits = 2;

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Session session = (Session)context.Data!;
        if (settings.Pages is { } folder)
        {
            if (settings.Topic.Length > 0)
                throw CommandFailure.WrongCommandLine("help --pages writes all of the handbook: leave the topic out.");
            WritePages(session, folder, settings.Overwrite);
            return ExitCodes.Answered;
        }
        HandbookTopic topic = Find(string.Join(' ', settings.Topic));
        Paper paper = session.Results.Paper;
        foreach (string line in HandbookText.Lines(topic, Math.Min(paper.Width, WidestText), paper.Letters.Shown))
            session.Results.WriteLine(line);
        if (FindingOptions.Known.TryGetValue(topic.Name, out string? option))
            session.Results.WriteLine($"\nOn the command line: {option}");
        return ExitCodes.Answered;
    }

    private static HandbookTopic Find(string asked)
    {
        if (asked.Length == 0)
            return HandbookTopics.Contents;
        if ((HandbookTopics.Find(asked) ?? HandbookTopics.Finding(asked.Trim('[', ']'))) is { } topic)
            return topic;
        string[] names = [.. HandbookTopics.All.Select(t => t.Name)];
        string nearest = names
            .Concat(HandbookTopics.Codes)
            .Concat(CommandList.Names)
            .MinBy(name => CommandLineErrors.Edits(asked, name))!;
        string tail =
            CommandLineErrors.Edits(asked, nearest) <= FarthestEdits
                ? $" Did you mean '{nearest}'?"
                : $" The topics are {string.Join(", ", names)}; commands and codes of findings are known too.";
        throw CommandFailure.WrongCommandLine($"The handbook has no '{asked}'.{tail}");
    }

    private static void WritePages(Session session, string folder, bool overwrite)
    {
        using OutputFolder output = OutputFolder.Begin(folder, overwrite, [], "--pages");
        output.Write(HandbookPages.Write);
        output.Complete();
        session.Results.WriteRaw($"The handbook: {Path.Combine(folder, "index.html")}\n");
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[TOPIC]")]
        [Description("A topic of the handbook, a command, or the code of a finding; the list of topics unless said.")]
        [HandbookWords]
        public string[] Topic { get; init; } = [];

        [CommandOption("--pages <FOLDER>")]
        [Description("Write the whole handbook as web pages into this folder.")]
        public string? Pages { get; init; }

        [CommandOption("--overwrite")]
        [Description("Replace pages that were written there before.")]
        public bool Overwrite { get; init; }
    }

    private sealed class HandbookWordsAttribute : WordsAttribute
    {
        public override IReadOnlyList<string> Words =>
            [
                .. HandbookTopics
                    .All.Select(topic => topic.Name)
                    .Concat(CommandList.Names)
                    .SelectMany(n => n.Split(' '))
                    .Distinct(),
            ];
    }
}
