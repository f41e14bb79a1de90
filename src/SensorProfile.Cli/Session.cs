using SensorProfile.Cli.Terminal;
using Spectre.Console;

namespace SensorProfile.Cli;

/// <summary>What a command needs of the world around it: where to print, when to stop, which clock.</summary>
/// <param name="Results">Standard output: answers only.</param>
/// <param name="Side">Standard error: progress, notes, errors.</param>
/// <param name="Clock">For the date in a profile and the time left.</param>
/// <param name="Stop">Set by Ctrl-C.</param>
internal sealed record Session(ResultStream Results, SideStream Side, TimeProvider Clock, CancellationToken Stop)
{
    public static Session OnThisTerminal(CancellationToken stop) =>
        new(
            ResultStream.Standard(),
            new SideStream(Console.Error, !Console.IsErrorRedirected, TimeProvider.System),
            DatedClock.FromEnvironment(),
            stop
        );

    public IAnsiConsole HelpConsole => Results.Help;
}
