namespace SensorProfile.Fitting.Statistics;

/// <summary>
/// Values at given ranks, without a sorted copy, so that a map of a large sensor is not doubled in memory.
/// </summary>
/// <remarks>
/// The upper 16 bits of the ordered bit pattern of a number choose one of 65 536 bins; only bins that contain a
/// requested rank are collected and sorted. Exact, in two passes.
/// </remarks>
internal static class OrderedRanks
{
    private const int Bins = 1 << 16;

    /// <summary>Number of values that are not NaN.</summary>
    public static long Count(ReadOnlySpan<float> values)
    {
        long count = 0;
        foreach (float value in values)
            if (!float.IsNaN(value))
                count++;
        return count;
    }

    /// <summary>The values at the given ranks, in the order of <paramref name="places"/>.</summary>
    /// <param name="values">NaN is skipped.</param>
    /// <param name="places">Ranks in ascending order, 0-based, below <see cref="Count"/>; may be listed in any
    /// order.</param>
    public static float[] Select(ReadOnlySpan<float> values, IReadOnlyList<long> places)
    {
        long[] counts = new long[Bins],
            below = new long[Bins + 1];
        foreach (float value in values)
            if (!float.IsNaN(value))
                counts[Key(value) >> 16]++;
        for (int bin = 0; bin < Bins; bin++)
            below[bin + 1] = below[bin] + counts[bin];
        var wanted = new Dictionary<int, List<float>>();
        int[] bins = [.. places.Select(p => BinOf(below, p))];
        foreach (int bin in bins)
            wanted.TryAdd(bin, []);
        foreach (float value in values)
            if (!float.IsNaN(value) && wanted.TryGetValue((int)(Key(value) >> 16), out List<float>? members))
                members.Add(value);
        foreach (List<float> members in wanted.Values)
            members.Sort();
        return [.. places.Select((place, i) => wanted[bins[i]][(int)(place - below[bins[i]])])];
    }

    private static int BinOf(long[] below, long place)
    {
        if (place < 0 || place >= below[^1])
            throw new ArgumentOutOfRangeException(
                nameof(place),
                $"There is no place {place} among {below[^1]} values."
            );
        int found = Array.BinarySearch(below, place);
        if (found < 0)
            return ~found - 1;
        while (below[found + 1] == place)
            found++; // empty bins repeat the count of the bin below
        return found;
    }

    /// <summary>
    /// Bits that sort like the numbers: the sign bit is flipped for positive numbers, all bits for negative ones; both
    /// zeros are equal.
    /// </summary>
    private static uint Key(float value)
    {
        uint bits = BitConverter.SingleToUInt32Bits(value == 0 ? 0f : value);
        return (bits & 0x8000_0000) == 0 ? bits ^ 0x8000_0000 : ~bits;
    }
}
