using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Frames;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>fleet</c>: how are all my cameras?</summary>
internal sealed class FleetCommand : AnswerCommand<FleetCommand.Settings>
{
    protected override string Name => "fleet";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        FoundProfiles found = ProfileArchive.Read([settings.Folder]);
        foreach (RejectedFile refused in found.Refused)
            session.Side.WriteLine($"left out: {refused.File}: {refused.Reason}");
        return found.Profiles.Count > 0
            ? FleetDocument.Compose(found, new DriftOptions())
            : throw CommandFailure.UnreadableInput(
                found.Refused is [var only]
                    ? $"{only.File}: {only.Reason}"
                    : $"nothing readable in {settings.Folder}: {Counted.Nouns(found.Refused.Count, "file")} left out, named above."
            );
    }

    internal sealed class Settings : AnswerSettings
    {
        [CommandArgument(0, "<DIR>")]
        [Description("An archive, or a folder with the results of your cameras; searched with all its subfolders.")]
        public string Folder { get; init; } = "";
    }
}
