using MathNet.Numerics.Distributions;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Share of the places in a dithered stack whose residual exceeds a limit: every place is the mean of k sensor pixels.
/// </summary>
/// <remarks>
/// The residuals of typical pixels add like noise: their mean has σ/√k. Those of hot pixels do not: one hot pixel among
/// k leaves a k-th of itself, and there are k times as many places with one. With h hot pixels among k drawn
/// independently, P(|Σx| > kL) = Σ_h B(h; k, p)·P_h, where P₀ is the tail of k typical pixels, their skewness kept, P₁
/// that of one hot pixel plus k − 1 typical ones, and for h ≥ 2 (taken at their mean number) a place stands out when
/// one of them does alone, or when the normal sum of those that do not does. Checked against a pixel-level Monte Carlo
/// in the tests.
/// </remarks>
internal static class DitheredShare
{
    /// <summary>The share.</summary>
    /// <param name="weights">Weight of each class; normalised so that all classes sum to 1.</param>
    /// <param name="excesses">Residual from the typical one, e-, of every class.</param>
    /// <param name="hotPixels">Whether the pixels of a class are hot.</param>
    /// <param name="positions">k, at least 2.</param>
    /// <param name="limit">L, e-.</param>
    internal static double Beyond(
        ReadOnlySpan<double> weights,
        ReadOnlySpan<double> excesses,
        ReadOnlySpan<bool> hotPixels,
        int positions,
        double limit
    )
    {
        double k = positions,
            threshold = k * limit,
            whole = 0;
        foreach (double part in weights)
            whole += part;
        (double core, double mean, double variance, double skewness) = Moments(
            weights,
            excesses,
            hotPixels,
            ofHot: false,
            double.PositiveInfinity
        );
        core /= whole;
        double hot = Math.Max(1 - core, 0),
            none = Math.Pow(core, k);
        double share = none * SkewedTail(k * mean, k * variance, skewness / Math.Sqrt(k), threshold);
        if (hot <= 0)
            return share;
        double alone = 0;
        for (int i = 0; i < weights.Length; i++)
            if (hotPixels[i])
                alone += weights[i] / whole * Tail(excesses[i] + (k - 1) * mean, (k - 1) * variance, threshold);
        double one = k * Math.Pow(core, k - 1);
        share += one * alone;
        double several = Math.Max(1 - none - one * hot, 0);
        if (several < 1e-9)
            return share;
        // mean number of hot pixels where there are two or more
        double count = (k * hot - one * hot) / several,
            rest = Math.Max(k - count, 0);
        // where every hot pixel is seen alone, rounding must not make the rest negative
        double spared = Math.Pow(Math.Max(0, 1 - alone / hot), count);
        (double weight, double hotMean, double hotVariance, _) = Moments(
            weights,
            excesses,
            hotPixels,
            ofHot: true,
            threshold
        );
        double together =
            weight > 0 ? Tail(count * hotMean + rest * mean, count * hotVariance + rest * variance, threshold) : 0;
        return share + several * (1 - spared * (1 - together));
    }

    private static (double Weight, double Mean, double Variance, double Skewness) Moments(
        ReadOnlySpan<double> weights,
        ReadOnlySpan<double> excesses,
        ReadOnlySpan<bool> hotPixels,
        bool ofHot,
        double farthest
    )
    {
        double weight = 0,
            sum = 0,
            squares = 0,
            cubes = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            double w = weights[i],
                x = excesses[i];
            if (hotPixels[i] != ofHot || (ofHot && !(Math.Abs(x) <= farthest)))
                continue;
            weight += w;
            sum += w * x;
            squares += w * x * x;
            cubes += w * x * x * x;
        }
        if (weight <= 0)
            return (0, 0, 0, 0);
        double mean = sum / weight,
            variance = Math.Max(squares / weight - mean * mean, 0);
        double third = cubes / weight - 3 * mean * squares / weight + 2 * mean * mean * mean;
        return (weight, mean, variance, variance > 0 ? third / (variance * Math.Sqrt(variance)) : 0);
    }

    /// <summary>
    /// P(|x| > limit) for a skewed x: a shifted gamma distribution with its mean, variance and skewness (Pearson's type
    /// III), normal where it is not skewed.
    /// </summary>
    private static double SkewedTail(double mean, double variance, double skewness, double limit)
    {
        if (variance <= 0 || !(Math.Abs(skewness) >= 0.02) || double.IsInfinity(skewness))
            return Tail(mean, variance, limit);
        double sigma = Math.Sqrt(variance),
            side = Math.Sign(skewness),
            shape = 4 / (skewness * skewness),
            root = Math.Sqrt(shape);
        double Below(double z) => shape + root * z <= 0 ? 0 : Gamma.CDF(shape, 1, shape + root * z);
        return 1 - Below((limit - side * mean) / sigma) + Below((-limit - side * mean) / sigma);
    }

    /// <summary>P(|x| > limit) for a normal x.</summary>
    private static double Tail(double mean, double variance, double limit)
    {
        if (variance <= 0)
            return Math.Abs(mean) > limit ? 1 : 0;
        double sigma = Math.Sqrt(variance),
            above = (limit - mean) / sigma,
            below = (-limit - mean) / sigma;
        if (above > 8 && below < -8)
            return 0;
        if (above < -8 || below > 8)
            return 1;
        return 1 - Normal.CDF(0, 1, above) + Normal.CDF(0, 1, below);
    }
}
