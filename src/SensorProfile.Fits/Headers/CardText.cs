using System.Text;

namespace SensorProfile.Fits.Headers;

/// <summary>Writes cards as 80-byte records (FITS 4.0 §4.2; long strings with CONTINUE, §4.2.1.2).</summary>
internal static class CardText
{
    private const int FixedFormatWidth = 20; // values of fixed format end in column 30
    private const int ValueStart = 10;
    private const int LongestString = 68; // between two quotes, from column 12 to column 79
    private const int LongestCommentary = 72;

    /// <summary>The records of a card: as read, or made from keyword, value and comment.</summary>
    public static byte[] Records(FitsCard card)
    {
        if (!card.Records.IsEmpty)
            return card.Records.ToArray();
        IEnumerable<string> lines = card.Kind switch
        {
            FitsValueKind.Commentary => CommentaryLines(card),
            FitsValueKind.Text => TextLines(card),
            _ => [WithComment($"{card.Keyword, -8}= {card.Value.PadLeft(FixedFormatWidth)}", card.Comment)],
        };
        return Encoding.ASCII.GetBytes(string.Concat(lines.Select(line => line.PadRight(CardParser.RecordBytes))));
    }

    /// <summary>The text with question marks for anything but printable ASCII.</summary>
    public static string Printable(string text) => string.Create(text.Length, text, static (span, source) =>
        {
            for (int i = 0; i < span.Length; i++)
                span[i] = source[i] is >= ' ' and <= '~' ? source[i] : '?';
        });

    private static IEnumerable<string> CommentaryLines(FitsCard card)
    {
        string text = card.Value;
        do
        {
            int length = Math.Min(LongestCommentary, text.Length);
            yield return $"{card.Keyword, -8}{text[..length]}";
            text = text[length..];
        } while (text.Length > 0);
    }

    private static IEnumerable<string> TextLines(FitsCard card)
    {
        string quoted = card.Value.Replace("'", "''", StringComparison.Ordinal);
        string start = $"{card.Keyword, -8}= ";
        while (quoted.Length > LongestString)
        {
            int length = LongestString - 1;
            if (Pairs(quoted, length) % 2 == 1)
                length--; // a doubled quote must not be split
            yield return $"{start}'{quoted[..length]}&'";
            quoted = quoted[length..];
            start = "CONTINUE  ";
        }

        string last = $"{start}'{quoted.PadRight(8)}'";
        yield return WithComment(last.PadRight(ValueStart + FixedFormatWidth), card.Comment);
    }

    /// <summary>Number of quotes at the end of the given leading characters.</summary>
    private static int Pairs(string text, int length)
    {
        int quotes = 0;
        while (quotes < length && text[length - 1 - quotes] == '\'')
            quotes++;
        return quotes;
    }

    private static string WithComment(string line, string? comment)
    {
        if (string.IsNullOrEmpty(comment) || line.Length + 4 > CardParser.RecordBytes)
            return line.TrimEnd();
        string whole = $"{line} / {Printable(comment)}";
        return whole.Length <= CardParser.RecordBytes ? whole : whole[..CardParser.RecordBytes];
    }
}
