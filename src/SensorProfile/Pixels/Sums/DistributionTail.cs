using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Pixels in the tails on either side of the level of a channel, and how many normal noise alone would put there.
/// </summary>
/// <remarks>
/// Everything else (hot pixels, shot noise, unequal pixels) only adds to a tail; a tail with fewer was cut after the
/// converter.
/// </remarks>
/// <param name="Above">Pixels above mean + 3.5 standard deviations.</param>
/// <param name="AboveExpected">Expected from normal noise, with the code step taken into account.</param>
/// <param name="Below">Pixels below mean − 3.5 standard deviations.</param>
/// <param name="BelowExpected">Expected from normal noise.</param>
internal readonly record struct DistributionTail(long Above, double AboveExpected, long Below, double BelowExpected)
{
    /// <summary>
    /// A pixel this many standard deviations from the level counts as tail: 2.3e-4 of the pixels on each side for
    /// normal noise.
    /// </summary>
    public const double Sigmas = 3.5;

    /// <summary>Counts the tails.</summary>
    /// <param name="codes">Histogram of the channel.</param>
    /// <param name="clipped">Mean and variance of the channel without outliers.</param>
    /// <param name="codeStep">ADU between two codes.</param>
    public static DistributionTail Measure(IntegerHistogram codes, ClippedMoments clipped, int codeStep)
    {
        double sigma = Math.Sqrt(clipped.Variance);
        if (!(sigma > 0))
            return default;
        // Starts at the first code whose whole step lies beyond the limit; codes that the camera does not use have no
        // pixels and do no harm.
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
