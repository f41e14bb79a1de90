namespace SensorProfile.Raw.Jpeg;

/// <summary>
/// A Huffman code for given frequencies, with no code longer than 16 bits and none all ones (ITU-T T.81, K.2).
/// </summary>
/// <param name="Counts">Number of codes of 1, 2, … 16 bits.</param>
/// <param name="Values">Their values, shortest code first.</param>
/// <param name="Lengths">Length of the code of each value; 0 for values that do not occur.</param>
/// <param name="Codes">Code of each value.</param>
internal sealed record HuffmanCode(byte[] Counts, byte[] Values, int[] Lengths, int[] Codes)
{
    private const int MaxBits = 16;

    /// <summary>Builds the code.</summary>
    /// <param name="frequencies">Frequency of each value; at least one is above 0.</param>
    public static HuffmanCode For(IReadOnlyList<long> frequencies)
    {
        int[] depths = Depths(frequencies);
        var counts = new int[64];
        foreach (int depth in depths.Where(depth => depth > 0))
            counts[depth]++;
        Shorten(counts);
        counts[Array.FindLastIndex(counts, count => count > 0)]--; // the reserved value has the longest code, all ones
        byte[] values =
        [
            .. Enumerable
                .Range(0, frequencies.Count)
                .Where(v => frequencies[v] > 0)
                .OrderBy(v => depths[v])
                .ThenBy(v => v)
                .Select(v => (byte)v),
        ];
        var lengths = new int[frequencies.Count];
        var codes = new int[frequencies.Count];
        (int code, int index) = (0, 0);
        for (int bits = 1; bits <= MaxBits; bits++, code <<= 1)
        for (int i = 0; i < counts[bits]; i++, code++, index++)
            (lengths[values[index]], codes[values[index]]) = (bits, code);
        return new HuffmanCode([.. counts.Skip(1).Take(MaxBits).Select(count => (byte)count)], values, lengths, codes);
    }

    /// <summary>
    /// Depth of every value in the tree, followed by that of the reserved value, the rarest of all.
    /// </summary>
    private static int[] Depths(IReadOnlyList<long> frequencies)
    {
        // doubled frequencies, so that the reserved value is the rarest
        List<(long Weight, int[] Members)> trees =
        [
            (1, [frequencies.Count]),
            .. frequencies.Select((f, v) => (f * 2, new[] { v })).Where(tree => tree.Item1 > 0),
        ];
        var depths = new int[frequencies.Count + 1];
        while (trees.Count > 1)
        {
            trees = [.. trees.OrderBy(tree => tree.Weight)];
            int[] joined = [.. trees[0].Members, .. trees[1].Members];
            foreach (int value in joined)
                depths[value]++;
            trees = [.. trees.Skip(2), (trees[0].Weight + trees[1].Weight, joined)];
        }
        return depths;
    }

    /// <summary>Shortens codes of more than 16 bits (T.81, figure K.3).</summary>
    private static void Shorten(int[] counts)
    {
        for (int bits = counts.Length - 1; bits > MaxBits; bits--)
            while (counts[bits] > 0)
            {
                int shorter = bits - 2;
                while (counts[shorter] == 0)
                    shorter--;
                counts[bits] -= 2;
                counts[bits - 1]++;
                counts[shorter + 1] += 2;
                counts[shorter]--;
            }
    }
}
