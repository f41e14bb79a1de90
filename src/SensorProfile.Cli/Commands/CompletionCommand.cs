using System.ComponentModel;
using SensorProfile.Cli.Describing;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>completion</c>: prints what a shell reads to complete commands, options and values.</summary>
internal sealed class CompletionCommand : Command<CompletionCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Session session = (Session)context.Data!;
        session.Results.WriteRaw(CompletionScript.Write(ShellOf(settings.Shell), CommandModel.Read(session)));
        return ExitCodes.Answered;
    }

    private static Shell ShellOf(string name)
    {
        foreach (Shell shell in Enum.GetValues<Shell>())
            if (EnumWord.Of(shell).Equals(name, StringComparison.OrdinalIgnoreCase))
                return shell;
        throw CommandFailure.WrongCommandLine(
            $"completion knows {string.Join(", ", Enum.GetValues<Shell>().Select(s => EnumWord.Of(s)))}, not {Quoted.Of(name)}."
        );
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<SHELL>")]
        [Description("bash, zsh, fish or powershell.")]
        [WordsOf<Shell>]
        public string Shell { get; init; } = "";
    }
}
