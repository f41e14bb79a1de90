using System.Numerics;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Row sums by column parity and column sums by row parity of one frame: enough for any channel of a 1 × 1 or 2 × 2
/// mosaic.
/// </summary>
internal sealed class LineSumsTally(int width)
{
    private readonly ulong[][] _columns = [new ulong[width], new ulong[width]];
    private readonly List<(int Row, long Even, long Odd)> _rows = [];

    /// <summary>Adds one row of the frame.</summary>
    public void Add(int row, ReadOnlySpan<ushort> samples)
    {
        var (even, odd) = SumByParity(samples);
        _rows.Add((row, even, odd));
        AddTo(_columns[row & 1], samples);
    }

    /// <summary>The sums of every channel, from tallies that together saw each row once.</summary>
    public static LineSums[] Merge(IEnumerable<LineSumsTally> tallies, ColourMosaic mosaic, int width, int height)
    {
        LineSumsTally[] all = [.. tallies];
        var sums = new LineSums[mosaic.Channels];
        for (int channel = 0; channel < sums.Length; channel++)
            sums[channel] = new LineSums(
                new long[mosaic.RowsOf(channel, height)],
                new long[mosaic.ColumnsOf(channel, width)]
            );
        foreach (var (row, even, odd) in all.SelectMany(tally => tally._rows))
        {
            sums[mosaic.Channel(row, 0)].Rows[row / mosaic.Period] += even;
            if (width > 1)
                sums[mosaic.Channel(row, 1)].Rows[row / mosaic.Period] += odd;
        }
        for (int parity = 0; parity < Math.Min(2, height); parity++)
            foreach (var tally in all)
                for (int column = 0; column < width; column++)
                    sums[mosaic.Channel(parity, column)].Columns[column / mosaic.Period] += (long)
                        tally._columns[parity][column];
        return sums;
    }

    /// <summary>Sums of the samples at even and at odd positions.</summary>
    internal static (long Even, long Odd) SumByParity(ReadOnlySpan<ushort> samples)
    {
        long even = 0,
            odd = 0;
        int done = 0;
        if (Vector.IsHardwareAccelerated && BitConverter.IsLittleEndian)
            done = SumByParityVector(samples, ref even, ref odd);
        for (int i = done; i < samples.Length; i++)
        {
            if ((i & 1) == 0)
                even += samples[i];
            else
                odd += samples[i];
        }
        return (even, odd);
    }

    /// <summary>
    /// A 32-bit lane holds two samples, the even one in its low half; a lane sum can take 65537 of them before it must
    /// be emptied.
    /// </summary>
    private static int SumByParityVector(ReadOnlySpan<ushort> samples, ref long even, ref long odd)
    {
        var low = new Vector<uint>(ushort.MaxValue);
        int step = Vector<ushort>.Count,
            i = 0;
        while (i <= samples.Length - step)
        {
            Vector<uint> evenSums = default,
                oddSums = default;
            int end = (int)Math.Min(samples.Length - step, i + 65535L * step);
            for (; i <= end; i += step)
            {
                var pair = new Vector<ushort>(samples[i..]).As<ushort, uint>();
                evenSums += pair & low;
                oddSums += pair >>> 16;
            }
            even += WideSum(evenSums);
            odd += WideSum(oddSums);
        }
        return i;
    }

    private static long WideSum(Vector<uint> lanes)
    {
        Vector.Widen(lanes, out var low, out var high);
        return (long)Vector.Sum(low + high);
    }

    /// <summary>Adds each sample to the sum at its position.</summary>
    internal static void AddTo(Span<ulong> sums, ReadOnlySpan<ushort> samples)
    {
        int i = 0,
            step = Vector<ulong>.Count;
        if (Vector.IsHardwareAccelerated)
        {
            for (; i <= samples.Length - Vector<ushort>.Count; i += Vector<ushort>.Count)
            {
                Vector.Widen(new Vector<ushort>(samples[i..]), out var low, out var high); // 16 → 32 bits
                Vector.Widen(low, out var a, out var b); // 32 → 64 bits
                Vector.Widen(high, out var c, out var d);
                AddVector(a, sums[i..]);
                AddVector(b, sums[(i + step)..]);
                AddVector(c, sums[(i + 2 * step)..]);
                AddVector(d, sums[(i + 3 * step)..]);
            }
        }
        for (; i < samples.Length; i++)
            sums[i] += samples[i];

        static void AddVector(Vector<ulong> terms, Span<ulong> sums) => (new Vector<ulong>(sums) + terms).CopyTo(sums);
    }
}
