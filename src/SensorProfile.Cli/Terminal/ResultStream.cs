using System.Text;
using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>Standard output as UTF-8, sent in one piece at the end, so that an answer is complete or absent.</summary>
internal sealed class ResultStream
{
    private const int HelpWidthInPipe = 80;
    private readonly StringBuilder text = new();
    private readonly Func<Stream> open;

    public ResultStream(Func<Stream> open, bool isTerminal)
    {
        this.open = open;
        StringWriter writer = new(text) { NewLine = "\n" };
        Width = TerminalWidth.Find(isTerminal, TerminalWidth.Unlimited);
        Page = ConsoleOutput.Create(writer, isTerminal, Width);
        Help = ConsoleOutput.Create(writer, isTerminal, TerminalWidth.Find(isTerminal, HelpWidthInPipe));
    }

    public int Width { get; }

    /// <summary>For answers.</summary>
    public IAnsiConsole Page { get; }

    /// <summary>For help texts, which wrap even in a pipe.</summary>
    public IAnsiConsole Help { get; }

    public static ResultStream Standard() => new(Console.OpenStandardOutput, !Console.IsOutputRedirected);

    /// <summary>Writes a text verbatim, whatever the width: JSON and other text for programs.</summary>
    public void WriteRaw(string text) => this.text.Append(text);

    /// <summary>
    /// Sends everything. A full disk behind a redirection is reported as an output that cannot be written, not as a crash.
    /// </summary>
    public void Send()
    {
        try
        {
            using Stream stream = open();
            stream.Write(new UTF8Encoding(false).GetBytes(text.ToString()));
            stream.Flush();
        }
        catch (IOException problem)
        {
            throw CommandFailure.UnwritableOutput(
                $"standard output: the answer could not be written ({problem.Message.TrimEnd('.')}). Free some "
                    + "space or choose another place.",
                problem
            );
        }
        text.Clear();
    }
}
