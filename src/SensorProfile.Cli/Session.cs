using System.Text;
using SensorProfile.Cli.Defaults;
using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;
using Spectre.Console;

namespace SensorProfile.Cli;

/// <summary>What a command needs from its surroundings: where to print, when to stop, which clock.</summary>
/// <param name="Results">Standard output: answers only.</param>
/// <param name="Side">Standard error: progress, notes, errors.</param>
/// <param name="Clock">Gives the date in a profile and the time left.</param>
/// <param name="Stop">Set by Ctrl-C.</param>
internal sealed record Session(
    ResultStream Results,
    StandardErrorStream Side,
    TimeProvider Clock,
    CancellationToken Stop
)
{
    /// <summary>The options that this run took from the user's setup.</summary>
    public RememberedOptions Remembered { get; init; } = RememberedOptions.Nothing;

    /// <summary>Where a person types answers; null when the input is not interactive.</summary>
    public TextReader? Person { get; init; }

    /// <summary>Takes an answer instead of standard output; null prints it.</summary>
    public Action<AnswerDocument>? Taker { get; init; }

    /// <param name="stop">Set by Ctrl-C.</param>
    /// <param name="terminal">The characters that the terminal takes; UTF-8 unless said.</param>
    public static Session OnThisTerminal(CancellationToken stop, Encoding? terminal = null) =>
        new(
            ResultStream.Standard(terminal ?? Encoding.UTF8),
            StandardErrorStream.Standard(terminal ?? Encoding.UTF8),
            DatedClock.FromEnvironment(),
            stop
        )
        {
            Person = Console.IsInputRedirected || Console.IsErrorRedirected ? null : Console.In,
        };

    public IAnsiConsole HelpConsole => Results.Help;
}
