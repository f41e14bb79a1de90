using Spectre.Console.Cli;
using Spectre.Console.Cli.Help;
using Spectre.Console.Rendering;

namespace SensorProfile.Cli.Describing;

/// <summary>
/// The whole command line, read from the model that its parser works with: caught where the parser prints the help, so
/// that completion and manual page cannot differ from what is understood.
/// </summary>
/// <param name="Commands">In the order of the help; those of a branch are its parts.</param>
/// <param name="Options">What the program takes without a command.</param>
internal sealed record CommandModel(IReadOnlyList<CommandShape> Commands, IReadOnlyList<ParameterShape> Options)
{
    private static readonly ParameterShape help = ParameterShape.Switch("Prints the help.", "-h", "--help");

    /// <summary>Every command that can be run.</summary>
    public IEnumerable<CommandShape> Runnable => Commands.SelectMany(c => c.IsBranch ? c.Parts : [c]);

    public IEnumerable<CommandShape> Branches => Commands.Where(c => c.IsBranch);

    public static CommandModel Read(Session session)
    {
        Catcher catcher = new();
        CommandApp parser = CommandLine.Parser(session);
        parser.Configure(config => config.SetHelpProvider(catcher));
        parser.Run(["--help"]);
        return new CommandModel(
            [.. catcher.Caught.Commands.Where(c => !c.IsHidden).Select(c => Shape(c, ""))],
            [help, ParameterShape.Switch("Prints the version.", "-v", "--version")]
        );
    }

    private static CommandShape Shape(ICommandInfo command, string before)
    {
        string name = before + command.Name;
        CommandShape[] parts = [.. command.Commands.Where(c => !c.IsHidden).Select(c => Shape(c, name + " "))];
        Type? settings = CommandList.SettingsOf(name);
        return new CommandShape(
            name,
            command.Description ?? "",
            [
                .. command
                    .Parameters.OfType<ICommandOption>()
                    .Where(o => settings is not null && !o.IsHidden)
                    .Select(o => ParameterShape.Of(o, settings!)),
                help,
            ],
            [
                .. command
                    .Parameters.OfType<ICommandArgument>()
                    .Where(_ => settings is not null)
                    .OrderBy(a => a.Position)
                    .Select(a => ParameterShape.Of(a, settings!)),
            ],
            [.. command.Examples],
            parts
        );
    }

    private sealed class Catcher : IHelpProvider
    {
        private ICommandModel? model;

        public ICommandModel Caught => model ?? throw new InvalidOperationException("The parser printed no help.");

        public IEnumerable<IRenderable> Write(ICommandModel model, ICommandInfo? command)
        {
            this.model = model;
            return [];
        }
    }
}
