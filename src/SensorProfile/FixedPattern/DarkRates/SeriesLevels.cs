namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>What the typical pixel of a channel shows at one temperature, from a sample of rows.</summary>
internal sealed record SeriesLevels
{
    /// <summary>Line through the exposures of this temperature.</summary>
    public required ExposureSlope Slope { get; init; }

    /// <summary>Median of the group means, ADU: [group][channel]; the unlit map last where it takes part.</summary>
    public required double[][] Levels { get; init; }

    /// <summary>Temporal variance of the typical pixel, ADU²: [group][channel].</summary>
    public required double[][] Variances { get; init; }

    /// <summary>Frames of each group.</summary>
    public required int[] Frames { get; init; }

    /// <summary>Median slope of each channel, ADU/s: taken away from every pixel of it.</summary>
    public required double[] Centres { get; init; }

    /// <summary>
    /// By how much these median slopes lie above the typical pixel's rate, because noise evens a skewed distribution
    /// out, e-/px/s, mean over the channels.
    /// </summary>
    public double MedianShift { get; init; }

    /// <summary>
    /// Uncertainty of a typical pixel's slope by its temporal noise, e-/px/s, mean over the channels.
    /// </summary>
    public required double Noise { get; init; }

    /// <summary>Robust spread of the slopes over the pixels, noise included, e-/px/s, mean over the channels.</summary>
    public required double Spread { get; init; }

    /// <summary>Slopes of the pixels of the sampled rows, ADU/s: the same pixels at every temperature.</summary>
    public float[] SampledSlopes { get; init; } = [];

    /// <summary>
    /// Covariance of the slopes of two halves of the frames over the core pixels: the variance of the rates themselves,
    /// (e-/px/s)²; not a number where the frames cannot be halved.
    /// </summary>
    public double CoreVariance { get; init; } = double.NaN;
}
