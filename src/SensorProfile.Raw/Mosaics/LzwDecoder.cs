namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Samples compressed with LZW as in TIFF 6.0, section 13: codes of 9 to 12 bits, highest bit first, widened one code
/// early.
/// </summary>
internal sealed class LzwDecoder : SegmentDecoder
{
    private const int ClearCode = 256;
    private const int EndCode = 257;
    private const int FirstFree = 258;
    private const int MaxCodes = 4096;

    private readonly SampleRow form;
    private readonly byte[] row;
    private readonly ushort[] prefix = new ushort[MaxCodes];
    private readonly ushort[] length = new ushort[MaxCodes];
    private readonly byte[] last = new byte[MaxCodes];
    private readonly byte[] first = new byte[MaxCodes];
    private readonly byte[] pending = new byte[MaxCodes]; // the end of a string that began in the previous row
    private (int From, int To) waiting;
    private int free;
    private int width;
    private int previous;
    private uint buffer;
    private int held;

    public LzwDecoder(SegmentBytes bytes, SampleCoding coding)
        : base(bytes)
    {
        form = new SampleRow(coding.Bits, coding.IsBigEndian, coding.Distance);
        row = new byte[form.Bytes(Width)];
        for (int code = 0; code < ClearCode; code++)
            (length[code], last[code], first[code]) = (1, (byte)code, (byte)code);
        Restart();
    }

    protected override void Restart()
    {
        Bytes.MoveTo(0);
        (buffer, held, waiting) = (0, 0, (0, 0));
        Clear();
    }

    protected override void Decode(Span<ushort> samples)
    {
        int done = 0;
        while (done < row.Length)
        {
            if (waiting.From == waiting.To)
                ReadString();
            int count = Math.Min(waiting.To - waiting.From, row.Length - done);
            pending.AsSpan(waiting.From, count).CopyTo(row.AsSpan(done));
            waiting.From += count;
            done += count;
        }
        form.Read(row, samples);
    }

    private void Clear() => (free, width, previous) = (FirstFree, 9, -1);

    private void ReadString()
    {
        int code = ReadCode();
        for (; code == ClearCode; code = ReadCode())
            Clear();
        if (code == EndCode)
            throw Bytes.Damaged("the compressed samples end too early (LZW).");
        if (code > free || (code >= FirstFree && previous < 0) || (code == free && free == MaxCodes))
            throw Bytes.Damaged("the compressed samples are damaged (LZW): a code stands before it was defined.");
        if (previous >= 0 && free < MaxCodes)
            Define(code);
        previous = code;
        waiting = (0, length[code]);
        for (int at = length[code] - 1; at >= 0; at--, code = prefix[code])
            pending[at] = last[code];
    }

    /// <summary>
    /// Defines the previous string plus the first byte of this one, which may be the very string being defined.
    /// </summary>
    private void Define(int code)
    {
        first[free] = first[previous];
        prefix[free] = (ushort)previous;
        length[free] = (ushort)(length[previous] + 1);
        last[free] = code == free ? first[previous] : first[code];
        free++;
        if (free + 1 >= 1 << width && width < 12)
            width++;
    }

    private int ReadCode()
    {
        while (held < width)
        {
            if (Bytes.Window.IsEmpty)
                Bytes.Fill();
            if (Bytes.Window.IsEmpty)
                throw Bytes.Damaged("the compressed samples end too early (LZW).");
            buffer = (buffer << 8) | Bytes.Window[0];
            Bytes.Advance(1);
            held += 8;
        }
        held -= width;
        return (int)(buffer >> held) & ((1 << width) - 1);
    }
}
