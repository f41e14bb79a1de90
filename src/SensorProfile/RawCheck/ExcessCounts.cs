using System.Numerics;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.RawCheck;

/// <summary>
/// Histogram of how far pixels stand above their neighbours of the same channel, code by code, in single frames.
/// </summary>
/// <remarks>An excess e falls into bin ⌊e/q⌋, q the step between codes: whatever the level of the neighbours, each bin
/// holds exactly one code, so rounding alone leaves no gaps. Only pixels at or above the minimum excess over the median
/// of eight are counted.</remarks>
internal sealed class ExcessCounts
{
    /// <summary>Number of bins; a greater excess is counted in the last one.</summary>
    public const int Bins = 1 << 14;

    private readonly int[][] counts = [.. Enum.GetValues<Surroundings>().Select(_ => new int[Bins])];

    /// <summary>Frames counted.</summary>
    public int Frames { get; private set; }

    /// <summary>Pixels in each bin.</summary>
    public ReadOnlySpan<int> Of(Surroundings surroundings) => counts[(int)surroundings];

    /// <summary>
    /// Mean number of pixels per frame whose excess over the median of eight lies in this bin or above.
    /// </summary>
    public double PerFrameFrom(int bin)
    {
        long sum = 0;
        foreach (int n in Of(Surroundings.MedianOfEight)[bin..])
            sum += n;
        return (double)sum / Frames;
    }

    /// <summary>Adds the counts of another histogram.</summary>
    public void Add(ExcessCounts other)
    {
        Frames += other.Frames;
        for (int kind = 0; kind < counts.Length; kind++)
        for (int bin = 0; bin < Bins; bin++)
            counts[kind][bin] += other.counts[kind][bin];
    }

    /// <summary>Counts another frame.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="least">Minimum excess over the median, ADU.</param>
    /// <param name="codeStep">q, ADU.</param>
    /// <param name="walk">Threads.</param>
    /// <param name="channels">Which channels are counted; null counts all.</param>
    public void Add(
        IFrameSamples frame,
        ColourMosaic mosaic,
        double least,
        int codeStep,
        WalkOptions walk,
        IReadOnlyList<bool>? channels = null
    )
    {
        int width = frame.Width,
            height = frame.Height,
            period = mosaic.Period,
            limit = (int)Math.Ceiling(least);
        var samples = GC.AllocateUninitializedArray<ushort>(checked(width * height));
        StripWalker.Walk(
            [frame],
            strip =>
            {
                strip.Samples(0).CopyTo(samples.AsSpan(strip.FirstRow * width));
                return true;
            },
            walk
        );
        Frames++;
        Parallel.For(
            2 * period,
            Math.Max(2 * period, height - 2 * period),
            new ParallelOptions { MaxDegreeOfParallelism = walk.Threads, CancellationToken = walk.Cancellation },
            y =>
            {
                Span<ushort> around = stackalloc ushort[24];
                for (int x = 2 * period; x < width - 2 * period; x++)
                {
                    if (
                        x + Vector<ushort>.Count <= width - 2 * period
                        && NoneStandsOut(samples, y * width + x, width, period, limit)
                    )
                    {
                        x += Vector<ushort>.Count - 1;
                        continue;
                    }
                    // The vector had a candidate: look at its pixels one by one.
                    int end = Math.Min(x + Vector<ushort>.Count, width - 2 * period);
                    for (; x < end; x++)
                        if (
                            channels?[mosaic.Channel(y, x)] != false
                            && StandsOut(samples, y * width + x, width, period, limit)
                        )
                            Count(samples, y * width + x, width, period, least, codeStep, around);
                    x--;
                }
            }
        );
    }

    // The median is at least the limit below the sample only if at least four of the eight neighbours are.
    private static bool StandsOut(ushort[] samples, int at, int width, int period, int limit)
    {
        int below = samples[at] - limit,
            up = at - period * width,
            down = at + period * width,
            near = 0;
        if (samples[at - period] <= below)
            near++;
        if (samples[at + period] <= below)
            near++;
        if (samples[up] <= below)
            near++;
        if (samples[down] <= below)
            near++;
        if (samples[up - period] <= below)
            near++;
        if (samples[up + period] <= below)
            near++;
        if (samples[down - period] <= below)
            near++;
        if (samples[down + period] <= below)
            near++;
        return near >= 4;
    }

    /// <summary>True when no pixel of a vector stands out.</summary>
    private static bool NoneStandsOut(ushort[] samples, int at, int width, int period, int limit)
    {
        var limits = new Vector<ushort>((ushort)Math.Min(limit, ushort.MaxValue));
        // a lane is a pixel
        Vector<ushort> below = Vector.Max(new Vector<ushort>(samples, at), limits) - limits,
            near = Vector<ushort>.Zero;
        for (int dy = -period; dy <= period; dy += period)
        for (int dx = -period; dx <= period; dx += period)
            if (dx != 0 || dy != 0)
                near -= Vector.LessThanOrEqual(new Vector<ushort>(samples, at + dy * width + dx), below);
        return Vector.LessThanAll(near, new Vector<ushort>(4));
    }

    private void Count(ushort[] samples, int at, int width, int period, double least, int codeStep, Span<ushort> around)
    {
        BrightPixels.Neighbours(samples, at, width, period, around[..8]);
        if (samples[at] - Middle(around[..8]) < least)
            return;
        Enter(around[..8], Surroundings.MedianOfEight, Surroundings.MeanOfEight, Surroundings.LargestOfEight);
        (around[0], around[1], around[2], around[3]) = (
            samples[at - period],
            samples[at + period],
            samples[at - period * width],
            samples[at + period * width]
        );
        around[..4].Sort();
        Enter(around[..4], Surroundings.MedianOfFour, Surroundings.MeanOfFour, Surroundings.LargestOfFour);
        int n = 0;
        for (int dy = -2 * period; dy <= 2 * period; dy += period)
        for (int dx = -2 * period; dx <= 2 * period; dx += period)
            if (dx != 0 || dy != 0)
                around[n++] = samples[at + dy * width + dx];
        around.Sort();
        Enter(around, Surroundings.MedianOfMany, Surroundings.MeanOfMany, Surroundings.LargestOfMany);

        void Enter(ReadOnlySpan<ushort> sorted, Surroundings median, Surroundings mean, Surroundings largest)
        {
            int sum = 0;
            foreach (ushort neighbour in sorted)
                sum += neighbour;
            Put(median, Middle(sorted));
            Put(mean, (double)sum / sorted.Length);
            Put(largest, sorted[^1]);
        }

        void Put(Surroundings kind, double level)
        {
            double excess = samples[at] - level;
            if (excess >= 0)
                Interlocked.Increment(ref counts[(int)kind][Math.Min((int)(excess / codeStep), Bins - 1)]);
        }
    }

    private static double Middle(ReadOnlySpan<ushort> sorted) =>
        (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2.0;
}
