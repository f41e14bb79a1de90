using SensorProfile.Pixels.Strips;

namespace SensorProfile.Pixels.Sums;

/// <summary>Per-pixel mean and temporal variance over N frames, from exact integer sums.</summary>
/// <remarks>mean = x₁ + Σd/N, variance = (N·Σd² − (Σd)²)/(N(N−1)), d = x − x₁. The sums are exact; each map value is
/// rounded once to double and once to single precision. Memory: the maps, and buffers that do not grow with the height
/// of the frames.</remarks>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="Frames">N.</param>
/// <param name="Mean">Per-pixel mean, ADU, row by row.</param>
/// <param name="Variance">Per-pixel temporal variance with divisor N − 1, ADU²; includes quantisation (step²/12). Empty
/// when only the mean was requested.</param>
internal sealed record PixelMoments(int Width, int Height, int Frames, float[] Mean, float[] Variance)
{
    /// <summary>Mean and variance of every pixel.</summary>
    /// <exception cref="ArgumentException">Fewer than 2 frames, more than 32768, or frames of different
    /// sizes.</exception>
    public static PixelMoments Measure(IReadOnlyList<IFrameSamples> frames, WalkOptions? options = null)
    {
        if (frames.Count < 2)
            throw new ArgumentException(
                $"{frames.Count} frame(s) have no temporal variance; at least 2 are needed.",
                nameof(frames)
            );
        var (width, height) = StripWalker.CommonSize(frames);
        var moments = new PixelMoments(width, height, frames.Count, NewMap(width, height), NewMap(width, height));
        GroupMoments.Walk([frames], strip => strip.CopyTo(0, moments.Mean, moments.Variance), options);
        return moments;
    }

    /// <summary>Only the mean of every pixel, ADU: the master frame.</summary>
    public static float[] MeanOf(IReadOnlyList<IFrameSamples> frames, WalkOptions? options = null)
    {
        var (width, height) = StripWalker.CommonSize(frames);
        float[] mean = NewMap(width, height);
        GroupMoments.Walk([frames], strip => strip.CopyTo(0, mean, []), options);
        return mean;
    }

    private static float[] NewMap(int width, int height) =>
        GC.AllocateUninitializedArray<float>(checked(width * height));
}
