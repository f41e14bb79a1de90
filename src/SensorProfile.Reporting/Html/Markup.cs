using System.Security;
using System.Text;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Html;

/// <summary>Turns plain text into markup.</summary>
internal static class Markup
{
    /// <summary>
    /// Escapes markup characters; drops control characters, which markup cannot hold, and characters that change the direction
    /// of reading; replaces broken characters.
    /// </summary>
    public static string Escape(string text) =>
        SecurityElement.Escape(
            string.Concat(
                NoBreak
                    .Apply(text)
                    .EnumerateRunes()
                    .Where(rune => !Rune.IsControl(rune) && !TurnsDirection(rune.Value))
                    .Select(rune => rune.ToString())
            )
        );

    private static bool TurnsDirection(int rune) =>
        rune is 0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);
}
