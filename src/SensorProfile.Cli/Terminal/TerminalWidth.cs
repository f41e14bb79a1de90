using System.Globalization;

namespace SensorProfile.Cli.Terminal;

/// <summary>How many columns a line may take.</summary>
internal static class TerminalWidth
{
    /// <summary>
    /// In a pipe or file a line is as long as its content: programs that read it care about line ends, not columns.
    /// </summary>
    public const int Unlimited = 4096;

    private const int Narrowest = 20,
        Usual = 80;

    /// <summary>
    /// COLUMNS when it is set, the terminal's width on a terminal, otherwise <paramref name="otherwise"/>.
    /// </summary>
    public static int Find(bool isTerminal, int otherwise)
    {
        if (
            int.TryParse(
                Environment.GetEnvironmentVariable("COLUMNS"),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out int asked
            )
            && asked > 0
        )
            return Math.Max(Narrowest, asked);
        return isTerminal ? Math.Max(Narrowest, Measured()) : otherwise;
    }

    private static int Measured()
    {
        try
        {
            return Console.WindowWidth is > 0 and int width ? width : Usual;
        }
        catch (IOException)
        {
            return Usual;
        }
    }
}
