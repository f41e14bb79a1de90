using System.Collections.Concurrent;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Counts of whole numbers at each of the four positions (row parity, column parity): enough for any channel of a 1 × 1
/// or 2 × 2 mosaic.
/// </summary>
/// <remarks>
/// Tables are cleared after <see cref="Merge"/> and reused: a frame touches few of the 65,536 bins, and clearing those
/// costs less than a fresh megabyte per frame and thread.
/// </remarks>
internal sealed class PositionCounts(int lowest, int values)
{
    private static readonly ConcurrentDictionary<int, ConcurrentBag<uint[][]>> spare = [];

    private readonly uint[][] _counts =
        spare.TryGetValue(values, out ConcurrentBag<uint[][]>? tables) && tables.TryTake(out uint[][]? empty)
            ? empty
            : [new uint[values], new uint[values], new uint[values], new uint[values]];

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

    /// <summary>
    /// The histogram of every channel, from the smallest to the largest value of all, from tallies that together saw
    /// each pixel once; the tallies cannot be used afterwards.
    /// </summary>
    public static IntegerHistogram[] Merge(
        IReadOnlyList<PositionCounts> tallies,
        ColourMosaic mosaic,
        int lowest,
        int values
    )
    {
        int first = values - 1,
            last = 0;
        foreach (uint[] table in tallies.SelectMany(tally => tally._counts))
            if (table.AsSpan().IndexOfAnyExcept(0u) is int least and >= 0)
                (first, last) = (Math.Min(first, least), Math.Max(last, table.AsSpan().LastIndexOfAnyExcept(0u)));
        if (first > last)
            first = last; // nothing was counted
        int length = last - first + 1;
        var counts = new long[mosaic.Channels][];
        for (int channel = 0; channel < counts.Length; channel++)
            counts[channel] = new long[length];
        foreach (var tally in tallies)
            for (int position = 0; position < 4; position++)
            {
                long[] sums = counts[mosaic.Channel(position / 2, position % 2)];
                Span<uint> terms = tally._counts[position].AsSpan(first, length);
                for (int i = 0; i < terms.Length; i++)
                    sums[i] += terms[i];
                terms.Clear();
            }
        ConcurrentBag<uint[][]> kept = spare.GetOrAdd(values, _ => []);
        foreach (var tally in tallies)
            kept.Add(tally._counts);
        return Array.ConvertAll(counts, channel => new IntegerHistogram(lowest + first, channel));
    }
}
