using System.Globalization;

namespace SensorProfile.Frames;

/// <summary>Reads and writes numbers as people and capture programs do, whatever the locale of this machine.</summary>
internal static class NumberText
{
    /// <summary>
    /// Reads "0.5", "0,5", "3,2E-05", "1.0D3", "26.", "−10", "NaN". A single comma is a decimal comma; digit grouping
    /// is not supported.
    /// </summary>
    public static bool TryParse(string text, out double value, out bool decimalComma)
    {
        string plain = text.Trim().Replace('\u2212', '-').Replace('D', 'E').Replace('d', 'e');
        decimalComma = plain.Contains(',', StringComparison.Ordinal);
        if (decimalComma)
        {
            bool single = plain.IndexOf(',', StringComparison.Ordinal) == plain.LastIndexOf(',');
            if (!single || plain.Contains('.', StringComparison.Ordinal))
            {
                value = double.NaN;
                return false;
            }
            plain = plain.Replace(',', '.');
        }
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>The shortest text that reads back as the same number.</summary>
    public static string Of(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A number for a sentence: at most the given decimals, a true minus sign, no trailing zeros.</summary>
    public static string Short(double value, int decimals = 2)
    {
        string text = value.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
        return (text == "-0" ? "0" : text).Replace('-', '\u2212');
    }
}
