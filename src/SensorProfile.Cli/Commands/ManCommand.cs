using SensorProfile.Cli.Describing;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>man</c>: prints the manual page.</summary>
internal sealed class ManCommand : Command<ManCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Session session = (Session)context.Data!;
        session.Results.WriteRaw(
            ManualPage.Write(CommandModel.Read(session), CommandLine.Version, session.Clock.GetUtcNow())
        );
        return ExitCodes.Answered;
    }

    internal sealed class Settings : CommandSettings;
}
