using System.Text;
using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>Standard error: progress, notes and errors; never part of an answer.</summary>
internal sealed class StandardErrorStream(
    TextWriter writer,
    bool isTerminal,
    TimeProvider clock,
    Letters? letters = null
)
{
    private readonly Paper paper = new(TerminalWidth.Find(isTerminal, TerminalWidth.Unlimited), letters ?? Letters.All);

    /// <summary>Standard error, in the letters of the terminal that it may be.</summary>
    public static StandardErrorStream Standard(Encoding terminal)
    {
        bool isTerminal = !Console.IsErrorRedirected;
        Letters letters = Letters.OfStream(isTerminal, terminal);
        TextWriter writer =
            isTerminal && letters != Letters.All
                ? TextWriter.Synchronized(
                    new StreamWriter(Console.OpenStandardError(), letters.Encoding) { AutoFlush = true }
                )
                : Console.Error;
        return new(writer, isTerminal, TimeProvider.System, letters);
    }

    /// <summary>Shows progress in place of the stream; null leaves it to the stream.</summary>
    public IProgressDisplay? Display { get; init; }

    /// <summary>Writes one line.</summary>
    public void WriteLine(string text) => writer.WriteLine(paper.Line(text));

    /// <summary>Writes the line that a failing command ends with.</summary>
    public void Error(string message) => writer.WriteLine("sensorprofile: " + paper.Line(message));

    /// <summary>Runs lengthy work with a progress display that suits the stream.</summary>
    public T Watch<T>(Func<IProgressDisplay, T> work)
    {
        if (Display is not null)
            return work(Display);
        IAnsiConsole console = ConsoleOutput.Create(writer, isTerminal, paper.Width);
        console.Profile.Capabilities.Unicode = paper.Letters == Letters.All;
        if (isTerminal && console.Profile.Capabilities.Ansi)
            return LiveProgress.Run(console, clock, paper.Letters, work);
        return work(new LineProgress(writer, clock, paper.Letters));
    }
}
