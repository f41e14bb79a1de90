using System.ComponentModel;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Printing;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting.Answers;
using SensorProfile.Setup;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>schema</c>: what is in a profile, in a setup, in an answer?</summary>
internal sealed class SchemaCommand : Command<SchemaCommand.Settings>
{
    private const string Profile = "profile",
        Setup = "setup";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        string name = string.Join(' ', settings.Name.DefaultIfEmpty(Profile)),
            schema = name switch
            {
                Profile => ProfileSchema.Json(),
                Setup => SetupFile.Schema(),
                _ => Answer(name) is { } shape
                    ? AnswerSchema.Json(shape)
                    : throw CommandFailure.WrongCommandLine(
                        $"schema knows {Profile}, {Setup} and the answers of {string.Join(", ", Answers)}; not '{name}'."
                    ),
            };
        ((Session)context.Data!).Results.WriteRaw(schema);
        return ExitCodes.Answered;
    }

    private static IEnumerable<string> Answers => AnswerShapes.All.Select(s => s.Command).Where(c => c != Setup);

    /// <summary>"setup" alone means the file; "setup answer" means what the command prints.</summary>
    private static AnswerShape? Answer(string name) =>
        AnswerShapes.All.FirstOrDefault(s => s.Command == name || $"{s.Command} answer" == name);

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[NAME]")]
        [Description("profile (the default), setup, or a command, for what it prints with --json: darks match.")]
        [NamedSchemas]
        public string[] Name { get; init; } = [];
    }

    private sealed class NamedSchemasAttribute : WordsAttribute
    {
        public override IReadOnlyList<string> Words =>
            [.. Answers.Prepend(Setup).Prepend(Profile).SelectMany(name => name.Split(' ')).Distinct()];
    }
}
