namespace SensorProfile.Raw.Jpeg;

/// <summary>
/// A Huffman table of lossless JPEG: codes of 1 to 16 bits for the number of bits of a difference, 0 to 16 (ITU-T T.81,
/// C and H.1.2.2).
/// </summary>
internal sealed class HuffmanTable
{
    /// <summary>Bits of the look-up; longer codes are rare and searched for.</summary>
    public const int LookupBits = 11;

    private const int MostBits = 16;

    private readonly ushort[] lookup = new ushort[1 << LookupBits];
    private readonly int[] codeLimit = new int[MostBits + 1]; // first 16-bit value above the codes of a length
    private readonly int[] valueOffset = new int[MostBits + 1];
    private readonly byte[] values;

    private HuffmanTable(ReadOnlySpan<byte> counts, byte[] values)
    {
        this.values = values;
        int code = 0;
        int index = 0;
        for (int bits = 1; bits <= MostBits; bits++)
        {
            valueOffset[bits] = index - code;
            for (int i = 0; i < counts[bits - 1]; i++, code++, index++)
                Enter(code, bits, values[index]);
            codeLimit[bits] = code << (MostBits - bits);
            code <<= 1;
        }
    }

    /// <summary>What is wrong with a table; null when it is a prefix code for differences.</summary>
    /// <param name="counts">Codes of 1, 2, … 16 bits.</param>
    /// <param name="values">Their values, the shortest code first.</param>
    public static string? Fault(ReadOnlySpan<byte> counts, ReadOnlySpan<byte> values)
    {
        int room = 1;
        foreach (byte count in counts)
        {
            room = (room << 1) - count;
            if (room < 0)
                return "the table has more codes than can be told apart.";
        }
        if (values.IsEmpty)
            return "the table is empty.";
        return values.ContainsAnyExceptInRange((byte)0, (byte)16) ? "a difference would have more than 16 bits." : null;
    }

    /// <summary>Makes a table that <see cref="Fault"/> finds nothing wrong with.</summary>
    public static HuffmanTable Of(ReadOnlySpan<byte> counts, ReadOnlySpan<byte> values) =>
        new(counts, values.ToArray());

    /// <summary>
    /// Length of the code and its value, as length + 256 · value, from the next bits; 0 when the code is longer than
    /// the look-up.
    /// </summary>
    public uint Look(ulong nextBits) => lookup[nextBits >> (64 - LookupBits)];

    /// <summary>As <see cref="Look"/> for a code of any length; 0 when there is no such code.</summary>
    public uint Search(ulong nextBits)
    {
        int sixteen = (int)(nextBits >> (64 - MostBits));
        for (int bits = 1; bits <= MostBits; bits++)
            if (sixteen < codeLimit[bits])
                return (uint)(bits | (values[(sixteen >> (MostBits - bits)) + valueOffset[bits]] << 8));
        return 0;
    }

    private void Enter(int code, int bits, byte value)
    {
        if (bits > LookupBits)
            return;
        int spare = LookupBits - bits;
        lookup.AsSpan(code << spare, 1 << spare).Fill((ushort)(bits | (value << 8)));
    }
}
