using System.Text;
using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>Standard output, sent in one piece at the end, so that an answer is complete or absent.</summary>
/// <remarks>UTF-8, unless it is a terminal that takes something else.</remarks>
internal sealed class ResultStream
{
    private const int HelpWidthInPipe = 80;
    private readonly StringBuilder text = new(), // for people, in letters still to be chosen
        settled = new();

    private readonly bool isTerminal;
    private readonly Func<Stream> open;

    public ResultStream(Func<Stream> open, bool isTerminal, Letters? letters = null)
    {
        this.isTerminal = isTerminal;
        this.open = open;
        StringWriter writer = new(text) { NewLine = "\n" };
        Paper = new Paper(TerminalWidth.Find(isTerminal, TerminalWidth.Unlimited), letters ?? Letters.All);
        Page = ConsoleOutput.Create(writer, isTerminal, Paper.Width);
        Help = ConsoleOutput.Create(writer, isTerminal, TerminalWidth.Find(isTerminal, HelpWidthInPipe));
    }

    public Paper Paper { get; }

    /// <summary>For answers.</summary>
    public IAnsiConsole Page { get; }

    /// <summary>For help texts, which wrap even in a pipe.</summary>
    public IAnsiConsole Help { get; }

    /// <param name="terminal">The characters of the terminal that it may be.</param>
    public static ResultStream Standard(Encoding terminal)
    {
        bool isTerminal = !Console.IsOutputRedirected;
        return new(Console.OpenStandardOutput, isTerminal, Letters.OfStream(isTerminal, terminal));
    }

    /// <summary>Writes one line for people, already laid out.</summary>
    public void WriteLine(string line) => text.Append(line).Append('\n');

    /// <summary>Writes a text verbatim, whatever the width: JSON and other text for programs.</summary>
    public void WriteRaw(string text)
    {
        Settle();
        settled.Append(text);
    }

    /// <summary>
    /// Sends everything. A full disk behind a redirection is reported as an output that cannot be written, not as a crash.
    /// </summary>
    public void Send()
    {
        try
        {
            Settle();
            string all = settled.ToString();
            using Stream stream = open();
            stream.Write(
                isTerminal
                    ? Paper.Letters.Encoding.GetBytes(Paper.Letters.Shown(all))
                    : new UTF8Encoding(false).GetBytes(all)
            );
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
        settled.Clear();
    }

    private void Settle()
    {
        settled.Append(Paper.Letters.Shown(text.ToString()));
        text.Clear();
    }
}
