using System.Security;

namespace SensorProfile.Reporting.Html;

/// <summary>Plain text on its way into markup.</summary>
internal static class Markup
{
    /// <summary>Escapes what has a meaning in markup, and drops control characters, which markup cannot hold.</summary>
    public static string Escape(string text) => SecurityElement.Escape(string.Concat(text.Where(c => !char.IsControl(c) && !char.IsSurrogate(c) || char.IsSurrogate(c) && IsPaired(text))));

    private static bool IsPaired(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                i++;
            else if (char.IsSurrogate(text[i]))
                return false;
        }
        return true;
    }
}
