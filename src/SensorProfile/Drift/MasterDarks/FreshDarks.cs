using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The mean of a set of fresh darks, and how much of its scatter is noise.</summary>
internal sealed class FreshDarks
{
    private FreshDarks(
        FrameSet set,
        int width,
        float[] mean,
        float[] halfDifference,
        double temporalVariance,
        int frames
    ) =>
        (Set, Width, Mean, HalfDifference, TemporalVariance, Frames) = (
            set,
            width,
            mean,
            halfDifference,
            temporalVariance,
            frames
        );

    /// <summary>The frames of the set.</summary>
    public FrameSet Set { get; }

    /// <summary>Columns of the maps, px.</summary>
    public int Width { get; }

    /// <summary>Rows of the maps, px.</summary>
    public int Height => Mean.Length / Width;

    /// <summary>Mean of all frames, ADU.</summary>
    public float[] Mean { get; }

    /// <summary>
    /// A map with the noise of <see cref="Mean"/> but no pattern: half the difference between the means of the odd and
    /// of the even frames (equal numbers), ADU.
    /// </summary>
    public float[] HalfDifference { get; }

    /// <summary>Temporal variance of the typical pixel in one frame, ADU².</summary>
    public double TemporalVariance { get; }

    /// <summary>Number of frames used, even.</summary>
    public int Frames { get; }

    /// <summary>Measures a set; null with fewer than two readable frames.</summary>
    /// <remarks>
    /// A surplus odd frame is left out, so that the half difference has exactly the noise of the mean.
    /// </remarks>
    public static FreshDarks? Read(FrameSet set, List<Finding> findings, CancellationToken cancellation)
    {
        using FrameStack stack = FrameStack.Open(set.Frames, cancellation: cancellation);
        foreach (RefusedFrame refused in stack.Refused)
            findings.Add(
                new Finding(
                    FindingCodes.FreshDarkRefused,
                    Severity.Warning,
                    $"{refused.Frame.Name} was left out: {refused.Reason}",
                    [refused.Frame.Name]
                )
            );
        int pairs = stack.Samples.Count / 2;
        if (pairs == 0)
            return null;
        var options = new WalkOptions { Cancellation = cancellation };
        float[] even = PixelMoments.MeanOf([.. Enumerable.Range(0, pairs).Select(i => stack.Samples[2 * i])], options);
        float[] odd = PixelMoments.MeanOf(
            [.. Enumerable.Range(0, pairs).Select(i => stack.Samples[2 * i + 1])],
            options
        );
        var mean = new float[even.Length];
        var half = new float[even.Length];
        for (int i = 0; i < even.Length; i++)
            (mean[i], half[i]) = ((even[i] + odd[i]) / 2, (even[i] - odd[i]) / 2);
        return Measured(set, set.Width, mean, half, 2 * pairs);
    }

    /// <summary>Cuts out a rectangle.</summary>
    public FreshDarks Part(int left, int top, int width, int height)
    {
        float[] Cut(float[] map)
        {
            var part = new float[width * height];
            for (int y = 0; y < height; y++)
                map.AsSpan((top + y) * Width + left, width).CopyTo(part.AsSpan(y * width));
            return part;
        }
        return Measured(Set, width, Cut(Mean), Cut(HalfDifference), Frames);
    }

    /// <summary>Means of b × b pixels, as software binning computes them.</summary>
    public FreshDarks Binned(int b) =>
        Measured(Set, Width / b, Binned(Mean, Width, b), Binned(HalfDifference, Width, b), Frames);

    /// <summary>Means of b × b pixels of a map; incomplete blocks are left out.</summary>
    internal static float[] Binned(float[] map, int width, int b)
    {
        int columns = width / b,
            rows = map.Length / width / b;
        var binned = new float[columns * rows];
        for (int y = 0; y < rows * b; y++)
        for (int x = 0; x < columns * b; x++)
            binned[y / b * columns + x / b] += map[y * width + x] / (b * b);
        return binned;
    }

    /// <summary>Takes maps already measured; the noise follows from the half difference.</summary>
    internal static FreshDarks Measured(FrameSet set, int width, float[] mean, float[] half, int frames)
    {
        double sigma = RobustSpread.Measure(half);
        return new FreshDarks(set, width, mean, half, sigma * sigma * frames, frames);
    }
}
