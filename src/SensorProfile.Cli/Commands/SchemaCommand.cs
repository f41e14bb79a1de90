using SensorProfile.Profiles.Files;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>schema</c>: what is in a profile?</summary>
internal sealed class SchemaCommand : Command<SchemaCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings)
    {
        ((Session)context.Data!).Results.WriteRaw(ProfileSchema.Json());
        return ExitCodes.Answered;
    }

    internal sealed class Settings : CommandSettings;
}
