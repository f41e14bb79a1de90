using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>Standard error: progress, notes and errors; never part of an answer.</summary>
internal sealed class StandardErrorStream(TextWriter writer, bool isTerminal, TimeProvider clock)
{
    private readonly IAnsiConsole console = ConsoleOutput.Create(
        writer,
        isTerminal,
        TerminalWidth.Find(isTerminal, TerminalWidth.Unlimited)
    );

    /// <summary>Shows progress in place of the stream; null leaves it to the stream.</summary>
    public IProgressDisplay? Display { get; init; }

    /// <summary>Writes one line.</summary>
    public void WriteLine(string text) => writer.WriteLine(Printable.Of(text));

    /// <summary>Writes the line that a failing command ends with.</summary>
    public void Error(string message) => writer.WriteLine("sensorprofile: " + Printable.Of(message));

    /// <summary>Runs lengthy work with a progress display that suits the stream.</summary>
    public T Watch<T>(Func<IProgressDisplay, T> work)
    {
        if (Display is not null)
            return work(Display);
        if (isTerminal && console.Profile.Capabilities.Ansi)
            return LiveProgress.Run(console, clock, work);
        return work(new LineProgress(writer, clock));
    }
}
