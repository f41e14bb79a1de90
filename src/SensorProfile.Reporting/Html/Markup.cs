using System.Security;
using System.Text;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Html;

/// <summary>Plain text on its way into markup.</summary>
internal static class Markup
{
    /// <summary>
    /// Escapes what has a meaning in markup; control characters, which it cannot hold, are dropped and broken
    /// characters replaced.
    /// </summary>
    public static string Escape(string text) =>
        SecurityElement.Escape(
            string.Concat(
                NoBreak
                    .Apply(text)
                    .EnumerateRunes()
                    .Where(rune => !Rune.IsControl(rune))
                    .Select(rune => rune.ToString())
            )
        );
}
