using System.Numerics;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.RawCheck;

/// <summary>
/// Counts of pixels that stand out from their surroundings in both of two frames, and of those that stand alone.
/// </summary>
/// <remarks>The lower of the two samples is used, so a charged-particle hit in one frame does not count. A pixel's
/// excess is that sample minus the median of its eight nearest neighbours in the same channel (smooth glow has no
/// excess); a pixel stands alone when no neighbour has half its excess. Pixels of a bright column or row are not
/// counted, because their neighbours along the line are bright too.</remarks>
/// <param name="ThresholdsAdu">Minimum excess of each count, ADU; each is twice the one before.</param>
/// <param name="Bright">Pixels with at least that excess.</param>
/// <param name="Alone">How many of them stand alone.</param>
/// <param name="Pixels">Pixels tested.</param>
internal sealed record BrightPixels(
    IReadOnlyList<double> ThresholdsAdu,
    IReadOnlyList<long> Bright,
    IReadOnlyList<long> Alone,
    long Pixels
)
{
    private const int Thresholds = 10;

    /// <summary>Counts the bright pixels of two frames.</summary>
    /// <param name="a">One frame.</param>
    /// <param name="b">Another of the same set.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="levels">Level of each channel, ADU.</param>
    /// <param name="leastAdu">The first threshold, ADU.</param>
    /// <param name="walk">How the walk is run.</param>
    public static BrightPixels Find(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        IReadOnlyList<double> levels,
        double leastAdu,
        WalkOptions walk
    )
    {
        int width = a.Width,
            height = a.Height,
            period = mosaic.Period;
        var lower = new ushort[checked(width * height)];
        StripWalker.Walk(
            [a, b],
            strip =>
            {
                Lower(strip.Samples(0), strip.Samples(1), lower.AsSpan(strip.FirstRow * width, strip.Pixels));
                return true;
            },
            walk
        );
        double[] thresholds = [.. Enumerable.Range(0, Thresholds).Select(k => leastAdu * Math.Pow(2, k))];
        long[] bright = new long[Thresholds],
            alone = new long[Thresholds];
        Parallel.For(
            period,
            Math.Max(period, height - period),
            new ParallelOptions { MaxDegreeOfParallelism = walk.Threads, CancellationToken = walk.Cancellation },
            y =>
            {
                Span<ushort> around = stackalloc ushort[8];
                for (int x = period; x < width - period; x++)
                {
                    int at = y * width + x;
                    if (lower[at] - levels[mosaic.Channel(y, x)] < leastAdu / 2)
                        continue;
                    Neighbours(lower, at, width, period, around);
                    double median = (around[3] + around[4]) / 2.0,
                        excess = lower[at] - median;
                    if (
                        InLine(lower, at, width * period, period, median + excess / 2)
                        || InLine(lower, at, period, width * period, median + excess / 2)
                    )
                        continue;
                    bool standsAlone = around[7] - median < excess / 2;
                    for (int k = 0; k < Thresholds && excess >= thresholds[k]; k++)
                    {
                        Interlocked.Increment(ref bright[k]);
                        if (standsAlone)
                            Interlocked.Increment(ref alone[k]);
                    }
                }
            }
        );
        return new(thresholds, bright, alone, (long)Math.Max(0, width - 2 * period) * Math.Max(0, height - 2 * period));
    }

    /// <summary>
    /// True for a pixel of a bright column or row: its neighbours along the line are bright too, those across are not.
    /// </summary>
    private static bool InLine(ushort[] samples, int at, int along, int across, double bright) =>
        samples[at - along] >= bright
        && samples[at + along] >= bright
        && samples[at - across] < bright
        && samples[at + across] < bright;

    private static void Lower(ReadOnlySpan<ushort> a, ReadOnlySpan<ushort> b, Span<ushort> lower)
    {
        int i = 0;
        for (; i <= a.Length - Vector<ushort>.Count; i += Vector<ushort>.Count)
            Vector.Min(new Vector<ushort>(a[i..]), new Vector<ushort>(b[i..])).CopyTo(lower[i..]);
        for (; i < a.Length; i++)
            lower[i] = Math.Min(a[i], b[i]);
    }

    internal static void Neighbours(ushort[] samples, int at, int width, int period, Span<ushort> sorted)
    {
        int n = 0;
        for (int dy = -period; dy <= period; dy += period)
        for (int dx = -period; dx <= period; dx += period)
            if (dx != 0 || dy != 0)
                sorted[n++] = samples[at + dy * width + dx];
        sorted.Sort();
    }
}
