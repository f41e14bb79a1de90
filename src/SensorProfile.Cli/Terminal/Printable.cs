namespace SensorProfile.Cli.Terminal;

/// <summary>
/// Makes text safe for a terminal: file names and header text may hold characters that move the cursor, forge a
/// line or change the direction of reading.
/// </summary>
internal static class Printable
{
    private const char Pictures = '\u2400'; // ␀ to ␟ stand for the control characters 0 to 31
    private const char Unknown = '\uFFFD';

    /// <summary>The text on one line, with a visible symbol for every character that has none.</summary>
    public static string Escape(string text) =>
        text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 ? text : string.Concat(text.Select(Escape));

    private static char Escape(char c) =>
        c < ' ' ? (char)(Pictures + c)
        : char.IsControl(c) || TurnsDirection(c) || c is '\u2028' or '\u2029' ? Unknown
        : c;

    private static bool TurnsDirection(char c) =>
        c is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
