namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// Temporal variance from the difference d = A − B of two frames taken under the same conditions; the fixed pattern
/// cancels in d.
/// </summary>
internal static class PairVariance
{
    /// <summary>σ² = ½·mean(d²) − ½·mean(d)², with divisor n. EMVA Standard 1288, Release 4.0 Linear.</summary>
    /// <remarks>
    /// Expectation σ²(1 − 1/n). Standard error for normal noise σ²·√(2/(n−1)); see <see cref="RelativeStandardError"/>.
    /// </remarks>
    /// <param name="pixels">n, at least 1.</param>
    /// <param name="sum">Σd, ADU.</param>
    /// <param name="sumOfSquares">Σd², ADU².</param>
    /// <returns>ADU²; the quantisation part (step²/12) is still in it.</returns>
    public static double OfSums(long pixels, Int128 sum, Int128 sumOfSquares)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pixels, 1);
        // exact integers: nothing cancels
        return (double)(pixels * sumOfSquares - sum * sum) / (2.0 * pixels * pixels);
    }

    /// <summary>The same with divisor n − 1: its expectation is σ².</summary>
    /// <param name="pixels">n, at least 2.</param>
    /// <param name="sum">Σd, ADU.</param>
    /// <param name="sumOfSquares">Σd², ADU².</param>
    public static double UnbiasedOfSums(long pixels, Int128 sum, Int128 sumOfSquares)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pixels, 2);
        return (double)(pixels * sumOfSquares - sum * sum) / (2.0 * pixels * (pixels - 1));
    }

    /// <summary>
    /// Standard error of the variance over the variance: √(2/(n−1) + κ/n), κ the excess kurtosis of d (0 for normal
    /// noise, 1/(2μ) for μ Poisson electrons).
    /// </summary>
    public static double RelativeStandardError(long pixels, double excessKurtosis = 0) =>
        Math.Sqrt(Math.Max(0, 2.0 / (pixels - 1) + excessKurtosis / pixels));
}
