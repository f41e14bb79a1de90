namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// Temporal variance from the difference d = A − B of two frames taken under the same conditions; the fixed pattern
/// cancels in d.
/// </summary>
internal static class PairVariance
{
    /// <summary>
    /// Standard error of the variance divided by the variance: √(2/(n−1) + κ/n), κ the excess kurtosis of d (0 for
    /// normal noise, 1/(2μ) for μ Poisson electrons).
    /// </summary>
    public static double RelativeStandardError(long pixels, double excessKurtosis = 0) =>
        Math.Sqrt(Math.Max(0, 2.0 / (pixels - 1) + excessKurtosis / pixels));
}
