namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Counts of whole numbers at each of the four positions (row parity, column parity): enough for any channel of a 1 × 1
/// or 2 × 2 mosaic.
/// </summary>
internal sealed class PositionCounts(int lowest, int values)
{
    private readonly uint[][] _counts = [new uint[values], new uint[values], new uint[values], new uint[values]];

    /// <summary>Counts one row of codes.</summary>
    public void Add(int row, ReadOnlySpan<ushort> samples)
    {
        Span<uint> even = _counts[2 * (row & 1)],
            odd = _counts[2 * (row & 1) + 1];
        int i = 0;
        for (; i + 1 < samples.Length; i += 2)
        {
            even[samples[i]]++;
            odd[samples[i + 1]]++;
        }
        if (i < samples.Length)
            even[samples[i]]++;
    }

    /// <summary>Counts one row of differences a − b.</summary>
    public void Add(int row, ReadOnlySpan<ushort> a, ReadOnlySpan<ushort> b)
    {
        Span<uint> even = _counts[2 * (row & 1)],
            odd = _counts[2 * (row & 1) + 1];
        b = b[..a.Length];
        int i = 0;
        for (; i + 1 < a.Length; i += 2)
        {
            even[a[i] - b[i] - lowest]++;
            odd[a[i + 1] - b[i + 1] - lowest]++;
        }
        if (i < a.Length)
            even[a[i] - b[i] - lowest]++;
    }

    /// <summary>The histogram of every channel from tallies that together saw each pixel once.</summary>
    public static IntegerHistogram[] Merge(
        IReadOnlyList<PositionCounts> tallies,
        ColourMosaic mosaic,
        int lowest,
        int values
    )
    {
        var counts = new long[mosaic.Channels][];
        for (int channel = 0; channel < counts.Length; channel++)
            counts[channel] = new long[values];
        foreach (var tally in tallies)
            for (int position = 0; position < 4; position++)
            {
                long[] sums = counts[mosaic.Channel(position / 2, position % 2)];
                uint[] terms = tally._counts[position];
                for (int i = 0; i < values; i++)
                    sums[i] += terms[i];
            }
        return Array.ConvertAll(counts, channel => new IntegerHistogram(lowest, channel));
    }
}
