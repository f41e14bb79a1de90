using System.Buffers;
using System.Globalization;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

public sealed partial class FitsCard
{
    private static readonly SearchValues<char> KeywordCharacters = SearchValues.Create(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_"
    );

    /// <summary>
    /// Makes a card with a string. Characters other than printable ASCII become question marks; longer strings continue
    /// over several records.
    /// </summary>
    /// <param name="keyword">1 to 8 of A–Z, 0–9, hyphen and underscore.</param>
    /// <param name="value">The string; trailing blanks are not significant.</param>
    /// <param name="comment">The comment, cut to fit the record.</param>
    /// <exception cref="ArgumentException">The keyword is invalid.</exception>
    public static FitsCard Of(string keyword, string value, string? comment = null)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new(Checked(keyword), FitsValueKind.Text, CardText.Printable(value).TrimEnd(' '), comment);
    }

    /// <summary>Makes a card with an integer.</summary>
    /// <inheritdoc cref="Of(string, string, string?)"/>
    public static FitsCard Of(string keyword, long value, string? comment = null) =>
        new(Checked(keyword), FitsValueKind.Integer, value.ToString(CultureInfo.InvariantCulture), comment);

    /// <summary>Makes a card with a real number, with the fewest digits that read back as the same double.</summary>
    /// <inheritdoc cref="Of(string, string, string?)"/>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite, which a header cannot
    /// hold.</exception>
    public static FitsCard Of(string keyword, double value, string? comment = null)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(
                nameof(value),
                $"{keyword}: a FITS header cannot hold {value.ToString(CultureInfo.InvariantCulture)}."
            );
        string literal = value.ToString("R", CultureInfo.InvariantCulture);
        return new(
            Checked(keyword),
            FitsValueKind.Real,
            literal.AsSpan().ContainsAny('.', 'E') ? literal : literal + ".0",
            comment
        );
    }

    /// <summary>Makes a COMMENT card; longer text continues over several records.</summary>
    public static FitsCard OfComment(string text) => Commentary("COMMENT", text);

    private static FitsCard Commentary(string keyword, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new(keyword, FitsValueKind.Commentary, CardText.Printable(text), null);
    }

    private static string Checked(string keyword)
    {
        ArgumentNullException.ThrowIfNull(keyword);
        bool good = keyword.Length is >= 1 and <= 8 && !keyword.AsSpan().ContainsAnyExcept(KeywordCharacters);
        return good && keyword is not ("END" or "COMMENT" or "HISTORY" or "CONTINUE")
            ? keyword
            : throw new ArgumentException(
                $"'{keyword}' cannot be the keyword of a value: 1 to 8 of A–Z, 0–9, hyphen and underscore.",
                nameof(keyword)
            );
    }
}
