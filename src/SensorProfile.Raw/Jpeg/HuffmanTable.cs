namespace SensorProfile.Raw.Jpeg;

/// <summary>
/// A Huffman table of lossless JPEG: codes of 1 to 16 bits for the bit length of a difference, 0 to 16 (ITU-T T.81, C
/// and H.1.2.2).
/// </summary>
internal sealed class HuffmanTable
{
    /// <summary>Bits of the look-up; longer codes are rare and found by search.</summary>
    public const int LookupBits = 11;

    private const int MaxBits = 16;

    private readonly int[] lookup = new int[1 << LookupBits];
    private readonly int[] codeLimit = new int[MaxBits + 1]; // first 16-bit value above the codes of a length
    private readonly int[] valueOffset = new int[MaxBits + 1];
    private readonly byte[] values;

    private HuffmanTable(ReadOnlySpan<byte> counts, byte[] values)
    {
        this.values = values;
        int code = 0;
        int index = 0;
        for (int bits = 1; bits <= MaxBits; bits++)
        {
            valueOffset[bits] = index - code;
            for (int i = 0; i < counts[bits - 1]; i++, code++, index++)
                Enter(code, bits, values[index]);
            codeLimit[bits] = code << (MaxBits - bits);
            code <<= 1;
        }
    }

    /// <summary>The fault of a table; null when it is a prefix code for differences.</summary>
    /// <param name="counts">Number of codes of 1, 2, … 16 bits.</param>
    /// <param name="values">Their values, shortest code first.</param>
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

    /// <summary>Makes a table for which <see cref="Fault"/> returns null.</summary>
    public static HuffmanTable Build(ReadOnlySpan<byte> counts, ReadOnlySpan<byte> values) =>
        new(counts, values.ToArray());

    /// <summary>A complete difference from the next bits; 0 when it and its code are longer than the look-up.</summary>
    /// <returns>65 536 · difference + bits of code and difference.</returns>
    public int Look(ulong nextBits) => lookup[nextBits >> (64 - LookupBits)];

    /// <summary>Length and value of the next code, as length + 256 · value; 0 when there is no such code.</summary>
    public uint Search(ulong nextBits)
    {
        int sixteen = (int)(nextBits >> (64 - MaxBits));
        for (int bits = 1; bits <= MaxBits; bits++)
            if (sixteen < codeLimit[bits])
                return (uint)(bits | (values[(sixteen >> (MaxBits - bits)) + valueOffset[bits]] << 8));
        return 0;
    }

    /// <summary>The difference encoded by n low bits (ITU-T T.81, table H.2).</summary>
    /// <remarks>
    /// Values of the upper half are positive and stay as they are; those of the lower half count from −(2ⁿ − 1).
    /// </remarks>
    /// <param name="value">The low bits.</param>
    /// <param name="bits">Their number n, 1 to 16.</param>
    public static int Difference(int value, int bits) => value - (((value >> (bits - 1)) - 1) & ((1 << bits) - 1));

    private void Enter(int code, int bits, byte value)
    {
        int spare = LookupBits - bits - value;
        if (spare < 0)
            return;
        for (int low = 0; low < 1 << value; low++)
        {
            int difference = value == 0 ? 0 : Difference(low, value);
            lookup.AsSpan(((code << value) | low) << spare, 1 << spare).Fill((difference << 16) | (bits + value));
        }
    }
}
