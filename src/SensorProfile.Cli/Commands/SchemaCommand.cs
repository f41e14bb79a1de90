using System.ComponentModel;
using SensorProfile.Profiles.Files;
using SensorProfile.Setup;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>schema</c>: what is in a profile, or in a setup?</summary>
internal sealed class SchemaCommand : Command<SchemaCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        string schema = settings.Name switch
        {
            "profile" => ProfileSchema.Json(),
            "setup" => SetupFile.Schema(),
            _ => throw CommandFailure.WrongCommandLine($"schema knows profile and setup, not '{settings.Name}'."),
        };
        ((Session)context.Data!).Results.WriteRaw(schema);
        return ExitCodes.Answered;
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[NAME]")]
        [Description("profile (unless said) or setup.")]
        public string Name { get; init; } = "profile";
    }
}
