namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Levels, noise and slopes of the typical pixel of each channel at one temperature, from a sample of rows.
/// </summary>
internal sealed record SeriesLevels
{
    /// <summary>Line through the exposures of this temperature.</summary>
    public required ExposureSlope Slope { get; init; }

    /// <summary>Median of the group means, ADU: [group][channel]; the unlit map, if used, is last.</summary>
    public required double[][] Levels { get; init; }

    /// <summary>Temporal variance of the typical pixel, ADU²: [group][channel].</summary>
    public required double[][] Variances { get; init; }

    /// <summary>Frames of each group.</summary>
    public required int[] Frames { get; init; }

    /// <summary>Median slope of each channel, ADU/s; subtracted from every pixel of the channel.</summary>
    public required double[] Centres { get; init; }

    /// <summary>
    /// How far these median slopes lie above the rate of the typical pixel, because noise makes a skewed distribution
    /// more symmetric, e-/px/s, mean over the channels.
    /// </summary>
    public double MedianShift { get; init; }

    /// <summary>
    /// Uncertainty of the slope of a typical pixel due to temporal noise, e-/px/s, mean over the channels.
    /// </summary>
    public required double Noise { get; init; }

    /// <summary>Robust spread of the slopes over the pixels, noise included, e-/px/s, mean over the channels.</summary>
    public required double Spread { get; init; }

    /// <summary>Slopes of the pixels of the sampled rows, ADU/s: the same pixels at every temperature.</summary>
    public float[] SampledSlopes { get; init; } = [];

    /// <summary>
    /// Covariance of the slopes of two halves of the frames over the core pixels: the variance of the rates themselves,
    /// (e-/px/s)²; not a number if the frames cannot be halved.
    /// </summary>
    public double CoreVariance { get; init; } = double.NaN;
}
