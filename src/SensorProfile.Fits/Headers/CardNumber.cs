using System.Globalization;

namespace SensorProfile.Fits.Headers;

/// <summary>
/// Numbers in header cards: FITS 4.0 §4.2.3 and §4.2.4, plus lower-case exponents and the decimal comma.
/// </summary>
internal static class CardNumber
{
    private const int LongestNumber = 80;

    /// <summary>The notation of a number; blanks are not allowed.</summary>
    public static NumberForm FormOf(ReadOnlySpan<char> text)
    {
        int at = 0;
        if (at < text.Length && text[at] is '+' or '-')
            at++;
        int whole = Digits(text, ref at),
            fraction = 0;
        NumberForm form = NumberForm.Integer;
        if (at < text.Length && text[at] is '.' or ',')
        {
            form = text[at] == '.' ? NumberForm.Real : NumberForm.RealWithComma;
            at++;
            fraction = Digits(text, ref at);
        }

        if (whole + fraction == 0)
            return NumberForm.None;
        if (at < text.Length && text[at] is 'E' or 'D' or 'e' or 'd')
        {
            at++;
            if (at < text.Length && text[at] is '+' or '-')
                at++;
            if (Digits(text, ref at) == 0)
                return NumberForm.None;
            if (form == NumberForm.Integer)
                form = NumberForm.Real;
        }

        return at == text.Length && text.Length <= LongestNumber ? form : NumberForm.None;
    }

    /// <summary>
    /// The number, rounded to the nearest double; null when the text is not a number or is beyond the range of a
    /// double.
    /// </summary>
    public static double? Parse(ReadOnlySpan<char> text)
    {
        if (FormOf(text) == NumberForm.None)
            return null;
        Span<char> invariant = stackalloc char[text.Length];
        for (int i = 0; i < text.Length; i++)
            invariant[i] = text[i] switch
            {
                ',' => '.',
                'D' or 'd' => 'E',
                var c => c,
            };
        double number = double.Parse(invariant, NumberStyles.Float, CultureInfo.InvariantCulture);
        return double.IsFinite(number) ? number : null;
    }

    private static int Digits(ReadOnlySpan<char> text, ref int at)
    {
        int start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return at - start;
    }
}
