using System.Globalization;

namespace SensorProfile.Frames.Headers;

/// <summary>
/// Keyword → value text of one image header, without quotes: all that header interpretation needs from FITS.
/// </summary>
internal sealed class KeywordValues
{
    private readonly Dictionary<string, string> values = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Takes the cards in order; of a repeated keyword the first one holds.</summary>
    public KeywordValues(IEnumerable<KeyValuePair<string, string>> cards)
    {
        foreach ((string keyword, string value) in cards)
        {
            string text = value.Trim();
            if (text.Length > 0)
                values.TryAdd(keyword, text);
        }
    }

    /// <summary>The value as text; null when the keyword is absent or blank.</summary>
    public string? Text(string keyword) => values.GetValueOrDefault(keyword);

    /// <summary>
    /// The value of the first of these keywords that is present, with the keyword; null when none is.
    /// </summary>
    public (string Keyword, string Text)? First(params ReadOnlySpan<string> keywords)
    {
        foreach (string keyword in keywords)
        {
            if (Text(keyword) is { } text)
                return (keyword, text);
        }
        return null;
    }

    /// <summary>
    /// The first of these keywords that holds a number; decimal commas and words in place of numbers become issues.
    /// </summary>
    public (string Keyword, double Value)? Number(
        List<HeaderIssue> issues,
        string? column,
        params ReadOnlySpan<string> keywords
    )
    {
        foreach (string keyword in keywords)
        {
            if (Text(keyword) is not { } text)
                continue;
            if (NumberText.TryParse(text, out double value, out bool decimalComma))
            {
                if (decimalComma)
                    issues.Add(
                        new HeaderIssue(
                            FindingCodes.DecimalComma,
                            $"{keyword} = {text}, read as {value.ToString("R", CultureInfo.InvariantCulture)}",
                            column
                        )
                    );
                return (keyword, value);
            }
            issues.Add(new HeaderIssue(FindingCodes.NotANumber, $"{keyword} = '{text}'", column));
        }
        return null;
    }
}
