using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Headers;

/// <summary>
/// Reads the header at a given byte: 2880-byte blocks of 80-byte records up to END (FITS 4.0 §3.3.1).
/// </summary>
internal sealed class HeaderReader
{
    public const int BlockBytes = 2880;
    private const int MaxBlocks = 4096; // 147 456 cards: far more than any real header; stops in garbage

    private readonly FileScan scan;
    private readonly long start;
    private readonly List<FitsCard> cards = [];
    private byte[] block = []; // the latest block; cards refer to their part of it
    private int length; // bytes of all blocks so far

    private HeaderReader(FileScan scan, long start) => (this.scan, this.start) = (scan, start);

    /// <summary>Reads the header at <paramref name="start"/> and reports its oddities.</summary>
    /// <param name="scan">The file.</param>
    /// <param name="start">First byte of the header.</param>
    /// <param name="dataStart">First byte after the header.</param>
    /// <exception cref="FitsFormatException">The header has no END, or is not a header.</exception>
    public static FitsHeader Read(FileScan scan, long start, out long dataStart)
    {
        var reader = new HeaderReader(scan, start);
        int end = reader.ReadRecords();
        reader.CheckRest(end);
        dataStart = start + reader.length;
        var header = new FitsHeader(reader.cards);
        reader.Warn(header);
        return header;
    }

    /// <summary>
    /// Reads blocks and parses records until END; returns the number of bytes up to and including END.
    /// </summary>
    private int ReadRecords()
    {
        int at = 0;
        while (true)
        {
            if (at == length)
                ReadBlock();
            ReadOnlyMemory<byte> record = block.AsMemory(at % BlockBytes, CardParser.RecordBytes);
            long offset = start + at;
            CheckRecord(record.Span, offset);
            at += CardParser.RecordBytes;
            FitsCard card = CardParser.Parse(record, offset);
            if (card is { Keyword: "END", Kind: FitsValueKind.Commentary })
                return at;
            if (card.Keyword != "CONTINUE" || !JoinLongString(card))
                cards.Add(card);
        }
    }

    private bool JoinLongString(FitsCard continuation)
    {
        if (cards is not [.., { Kind: FitsValueKind.Text } last] || !last.Value.EndsWith('&'))
            return false;
        byte[] records = [.. last.Records.Span, .. continuation.Records.Span];
        if (CardParser.Continue(last, continuation, records) is not { } joined)
            return false;
        cards[^1] = joined;
        return true;
    }

    private void ReadBlock()
    {
        if (length == MaxBlocks * BlockBytes)
            throw NoEnd(start + length, $"no END card within the first {length} bytes of the header.");
        block = new byte[BlockBytes];
        int read = scan.Source.Read(start + length, block);
        if (read == 0 && length > 0)
            throw NoEnd(start + length, "the file ends before the END card of the header.");
        if (length == 0)
            CheckBeginning(block.AsSpan(0, read));
        if (read < BlockBytes && !EndsIn(block.AsSpan(0, read)))
            throw scan.Truncated(
                start + length + read,
                start + length,
                start + length + BlockBytes,
                "this block of the header"
            );
        if (read < BlockBytes)
            block.AsSpan(read).Fill((byte)' ');
        length += BlockBytes;
    }

    private static bool EndsIn(ReadOnlySpan<byte> bytes)
    {
        for (int at = 0; at + 3 <= bytes.Length; at += CardParser.RecordBytes)
        {
            ReadOnlySpan<byte> record = bytes[at..Math.Min(at + CardParser.RecordBytes, bytes.Length)];
            if (record.StartsWith("END"u8) && !record[3..].ContainsAnyExcept((byte)' '))
                return true;
        }

        return false;
    }

    private void CheckBeginning(ReadOnlySpan<byte> beginning)
    {
        const string remedy = "Leave the file out, or save it as FITS again.";
        if (beginning.Length == 0 && scan.Source.Damage is { } damage)
            throw damage;
        if (beginning.Length == 0)
            throw scan.Fault(null, start, "the file is empty.", "Copy it again from its origin, or leave it out.");
        if (scan.Hdu == 0 && !beginning.StartsWith("SIMPLE  ="u8))
            throw scan.Fault(null, start, "this is not a FITS file: it does not begin with SIMPLE.", remedy);
        if (
            beginning[..Math.Min(beginning.Length, CardParser.RecordBytes)].IndexOfAny((byte)'\n', (byte)'\r')
            is >= 0
                and var newline
        )
            throw scan.Fault(
                null,
                start + newline,
                "expected a card of 80 bytes, found a line of text that ends here.",
                remedy
            );
    }

    /// <summary>
    /// A record with non-text bytes in its keyword field is not a record: the header has run into the data.
    /// </summary>
    private void CheckRecord(ReadOnlySpan<byte> record, long offset)
    {
        if (record[..8].IndexOfAnyExceptInRange((byte)' ', (byte)'~') >= 0)
            throw NoEnd(offset, "the header has no END card: expected a keyword, found bytes that are not text.");
        if (record.IndexOfAnyExceptInRange((byte)' ', (byte)'~') is >= 0 and var odd)
            scan.Warn(
                FitsWarningCodes.NonAscii,
                CardParser.Parse(record.ToArray(), offset).Keyword,
                offset + odd,
                $"byte 0x{record[odd]:X2} is not printable ASCII; it is read as Latin-1 text."
            );
    }

    private FitsFormatException NoEnd(long offset, string problem) => scan.Fault(null, offset, problem);

    private void CheckRest(int end)
    {
        if (block.AsSpan(end - (length - BlockBytes)).IndexOfAnyExcept((byte)' ') is >= 0 and var rest)
            scan.Warn(
                FitsWarningCodes.TextAfterEnd,
                null,
                start + end + rest,
                "expected blanks between END and the end of the header; other bytes were ignored."
            );
    }

    private void Warn(FitsHeader header)
    {
        foreach (FitsCard card in header)
        {
            if (card.Kind == FitsValueKind.Malformed)
                scan.Warn(
                    FitsWarningCodes.MalformedValue,
                    card.Keyword,
                    card.ByteOffset,
                    $"'{card.Value}' is not a FITS value; the keyword counts as not given."
                );
            else if (card.Kind == FitsValueKind.Real && card.HasDecimalComma)
                scan.Warn(
                    FitsWarningCodes.DecimalComma,
                    card.Keyword,
                    card.ByteOffset,
                    $"'{card.Value}' has a decimal comma; it is read as a decimal point."
                );
        }

        foreach (FitsCard card in header.Repeated)
            scan.Warn(
                FitsWarningCodes.DuplicateKeyword,
                card.Keyword,
                card.ByteOffset,
                $"the keyword appears twice, with '{header.Card(card.Keyword)!.Value}' and '{card.Value}'; the "
                    + "first one counts."
            );
    }
}
