namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// Keeps what belongs together on one line: a value with its uncertainty, a number with its percent sign or degree.
/// </summary>
internal static class NoBreak
{
    private const char Space = '\u00A0';

    /// <summary>The text with no-break spaces where a line must not break.</summary>
    public static string Apply(string text) =>
        text.Replace(" ± ", $"{Space}±{Space}", StringComparison.Ordinal)
            .Replace(" %", $"{Space}%", StringComparison.Ordinal)
            .Replace(" °C", $"{Space}°C", StringComparison.Ordinal);
}
