using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Pixels far out on either side of one channel of a frame, and how many normal noise alone would put there.
/// </summary>
/// <remarks>
/// Everything else (hot pixels, shot noise, unequal pixels) only adds to a tail; a tail that holds fewer was cut after
/// the converter.
/// </remarks>
/// <param name="Above">Pixels above mean + 3.5 standard deviations.</param>
/// <param name="AboveExpected">Of normal noise, the codes' steps allowed for.</param>
/// <param name="Below">Pixels below mean − 3.5 standard deviations.</param>
/// <param name="BelowExpected">Of normal noise.</param>
internal readonly record struct DistributionTail(long Above, double AboveExpected, long Below, double BelowExpected)
{
    /// <summary>
    /// Standard deviations from the level from which a pixel is far out: 2.3e-4 of the pixels of normal noise.
    /// </summary>
    public const double Sigmas = 3.5;

    /// <summary>Counts the tails.</summary>
    /// <param name="codes">Histogram of the channel.</param>
    /// <param name="clipped">Its mean and variance without outliers.</param>
    /// <param name="codeStep">ADU between two codes.</param>
    public static DistributionTail Measure(IntegerHistogram codes, ClippedMoments clipped, int codeStep)
    {
        double sigma = Math.Sqrt(clipped.Variance);
        if (!(sigma > 0))
            return default;
        // From the first code on whose whole step lies beyond the limit; a code that a camera does not use has no
        // pixels and does no harm.
        int high = (int)Math.Ceiling(clipped.Mean + Sigmas * sigma + codeStep / 2.0),
            low = (int)Math.Floor(clipped.Mean - Sigmas * sigma - codeStep / 2.0);
        int first = high + ((codes.Minimum - high) % codeStep + codeStep) % codeStep,
            last = low - ((low - codes.Minimum) % codeStep + codeStep) % codeStep;
        return new(
            first > codes.Highest ? 0 : codes.CountBetween(first, codes.Highest),
            codes.Count * Probability.NormalTail((first - codeStep / 2.0 - clipped.Mean) / sigma),
            last < codes.Lowest ? 0 : codes.CountBetween(codes.Lowest, last),
            codes.Count * Probability.NormalTail((clipped.Mean - last - codeStep / 2.0) / sigma)
        );
    }

    /// <summary>Adds another frame or channel.</summary>
    public DistributionTail Plus(DistributionTail other) =>
        new(
            Above + other.Above,
            AboveExpected + other.AboveExpected,
            Below + other.Below,
            BelowExpected + other.BelowExpected
        );
}
