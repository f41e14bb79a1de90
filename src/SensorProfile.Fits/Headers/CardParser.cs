using System.Text;

namespace SensorProfile.Fits.Headers;

/// <summary>Parses 80-byte header records (FITS 4.0 §4.1 and §4.2, and the HIERARCH convention).</summary>
internal static class CardParser
{
    public const int RecordBytes = 80;
    private const int KeywordBytes = 8;

    /// <summary>
    /// Parses one record. Bytes above 126 are read as Latin-1, control characters become question marks.
    /// </summary>
    public static FitsCard Parse(ReadOnlyMemory<byte> record, long byteOffset)
    {
        string text = Decode(record.Span);
        string keyword = text[..KeywordBytes].TrimEnd();
        if (keyword == "HIERARCH" && text.IndexOf('=', StringComparison.Ordinal) is > KeywordBytes and var equals)
        {
            string[] words = text[KeywordBytes..equals].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return Value(string.Join(' ', words).ToUpperInvariant(), text[(equals + 1)..], record, byteOffset);
        }

        // The standard requires "= " in columns 9 and 10; a lone "=" is accepted, so that a careless BZERO is not lost.
        bool commentary = keyword is "" or "COMMENT" or "HISTORY" or "CONTINUE" or "END" || text[KeywordBytes] != '=';
        return commentary
            ? new FitsCard(keyword.ToUpperInvariant(), FitsValueKind.Commentary, text[KeywordBytes..].TrimEnd(), null)
            {
                ByteOffset = byteOffset,
                Records = record,
            }
            : Value(keyword.ToUpperInvariant(), text[(KeywordBytes + 1)..], record, byteOffset);
    }

    /// <summary>
    /// Appends the string of a CONTINUE record to a long string; null when the record holds no string.
    /// </summary>
    public static FitsCard? Continue(FitsCard card, FitsCard continuation, ReadOnlyMemory<byte> records)
    {
        var (kind, value, comment) = ParseValue(continuation.Value);
        if (kind != FitsValueKind.Text)
            return null;
        return new FitsCard(
            card.Keyword,
            FitsValueKind.Text,
            (card.Value[..^1] + value).TrimEnd(' '),
            comment ?? card.Comment
        )
        {
            ByteOffset = card.ByteOffset,
            Records = records,
        };
    }

    private static FitsCard Value(string keyword, string field, ReadOnlyMemory<byte> record, long byteOffset)
    {
        var (kind, value, comment) = ParseValue(field);
        return new FitsCard(keyword, kind, value, comment) { ByteOffset = byteOffset, Records = record };
    }

    private static (FitsValueKind Kind, string Value, string? Comment) ParseValue(string field)
    {
        string text = field.TrimStart();
        if (text.StartsWith('\''))
            return ParseText(text);
        int slash = text.IndexOf('/', StringComparison.Ordinal);
        string literal = (slash < 0 ? text : text[..slash]).TrimEnd();
        string? comment = slash < 0 ? null : text[(slash + 1)..].Trim();
        return (KindOf(literal), literal, comment);
    }

    private static FitsValueKind KindOf(string literal) =>
        literal switch
        {
            "" => FitsValueKind.Undefined,
            "T" or "F" => FitsValueKind.Logical,
            ['(', .. var inside, ')'] => IsComplex(inside) ? FitsValueKind.Complex : FitsValueKind.Malformed,
            _ => CardNumber.FormOf(literal) switch
            {
                NumberForm.Integer => FitsValueKind.Integer,
                NumberForm.Real or NumberForm.RealWithComma => FitsValueKind.Real,
                _ => FitsValueKind.Malformed,
            },
        };

    private static bool IsComplex(string inside)
    {
        string[] parts = inside.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length == 2 && Array.TrueForAll(parts, part => CardNumber.FormOf(part) != NumberForm.None);
    }

    private static (FitsValueKind Kind, string Value, string? Comment) ParseText(string quoted)
    {
        var value = new StringBuilder(quoted.Length);
        for (int i = 1; i < quoted.Length; i++)
        {
            if (quoted[i] != '\'')
            {
                value.Append(quoted[i]);
            }
            else if (i + 1 < quoted.Length && quoted[i + 1] == '\'')
            {
                value.Append(quoted[i++]); // a doubled quote means one
            }
            else
            {
                string rest = quoted[(i + 1)..].TrimStart();
                bool clean = rest.Length == 0 || rest[0] == '/';
                return clean
                    ? (FitsValueKind.Text, value.ToString().TrimEnd(' '), rest.Length == 0 ? null : rest[1..].Trim())
                    : (FitsValueKind.Malformed, quoted.TrimEnd(), null);
            }
        }

        return (FitsValueKind.Malformed, quoted.TrimEnd(), null); // the closing quote is missing
    }

    private static string Decode(ReadOnlySpan<byte> record) =>
        string.Create(RecordBytes, record, static (text, bytes) =>
        {
            for (int i = 0; i < text.Length; i++)
                text[i] = bytes[i] is < 32 or (>= 127 and < 160) ? '?' : (char)bytes[i];
        });
}
