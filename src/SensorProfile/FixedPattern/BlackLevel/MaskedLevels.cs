using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Level and noise of the masked pixels in one set of frames.</summary>
/// <param name="Levels">Mean level of every frame, ADU.</param>
/// <param name="Pairs">Noise of every pair of consecutive frames.</param>
internal sealed record MaskedLevels(double[] Levels, MaskedPair[] Pairs)
{
    /// <summary>Measures the frames; two are held in memory at once.</summary>
    public static MaskedLevels Measure(MaskedPixels pixels, IReadOnlyList<IFrameSamples> frames)
    {
        var levels = new double[frames.Count];
        var pairs = new List<MaskedPair>();
        ushort[]? before = null;
        for (int i = 0; i < frames.Count; i++)
        {
            ushort[] here = pixels.Read(frames[i]);
            levels[i] = Level(here);
            if (before is not null)
                pairs.Add(MaskedPair.Measure(before, here, pixels.Columns.Length));
            before = before is null ? here : null; // disjoint pairs
        }
        return new(levels, [.. pairs]);
    }

    // A few hot pixels would raise the mean, so it is clipped like the levels of whole frames.
    private static double Level(ushort[] samples)
    {
        var counts = new long[ushort.MaxValue + 1];
        foreach (ushort code in samples)
            counts[code]++;
        return ClippedMoments.Measure(new IntegerHistogram(0, counts)).Mean;
    }
}
