using System.Text;
using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>A writer with a width, in the form that Spectre.Console needs.</summary>
internal sealed class ConsoleOutput(TextWriter writer, bool isTerminal, int width) : IAnsiConsoleOutput
{
    public TextWriter Writer => writer;

    public bool IsTerminal => isTerminal;

    public int Width => width;

    public int Height => 25;

    public void SetEncoding(Encoding encoding) { }

    /// <summary>
    /// Colours and cursor movements only on a terminal; no colours when NO_COLOR is set (Spectre.Console honours it).
    /// </summary>
    public static IAnsiConsole Create(TextWriter writer, bool isTerminal, int width) =>
        AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Out = new ConsoleOutput(writer, isTerminal, width),
                Ansi =
                    isTerminal && Environment.GetEnvironmentVariable("TERM") != "dumb"
                        ? AnsiSupport.Detect
                        : AnsiSupport.No,
                ColorSystem = isTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
                Interactive = isTerminal ? InteractionSupport.Yes : InteractionSupport.No,
            }
        );
}
