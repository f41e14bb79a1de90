using SensorProfile.Fitting.Statistics;

namespace SensorProfile.PhotonTransfer;

/// <summary>Temporal variance pooled over pairs.</summary>
/// <param name="Value">Pooled variance, ADU², quantisation included.</param>
/// <param name="StandardUncertainty">Standard uncertainty, ADU²; widened when the pairs disagree beyond chance.</param>
/// <param name="Pairs">Number of pairs.</param>
/// <param name="PairsAgree">False when the pairs scatter more than chance allows (p &lt; 1 %).</param>
internal sealed record PooledVariance(double Value, double StandardUncertainty, int Pairs, bool PairsAgree)
{
    /// <summary>Pools the variances of m pairs, each with its own standard error.</summary>
    /// <remarks>
    /// The statistical error √(2/n)/√m stands while χ² allows it; otherwise the scatter between the pairs is taken,
    /// with Student's widening.
    /// </remarks>
    /// <returns>Null without a pair.</returns>
    public static PooledVariance? Pool(IReadOnlyList<(double Variance, double StandardError)> pairs)
    {
        if (pairs.Count == 0)
            return null;
        double value = pairs.Average(p => p.Variance);
        double statistical = Math.Sqrt(pairs.Sum(p => p.StandardError * p.StandardError)) / pairs.Count;
        if (pairs.Count == 1)
            return new(value, statistical, 1, true);

        double chiSquared = pairs
            .Where(p => p.StandardError > 0) // pixels that never change say nothing about scatter
            .Sum(p => Math.Pow((p.Variance - value) / p.StandardError, 2));
        int freedom = pairs.Count - 1;
        bool agree = Probability.ChiSquaredTail(chiSquared, freedom) > 0.01;
        double scatter = Math.Sqrt(pairs.Sum(p => Math.Pow(p.Variance - value, 2)) / freedom / pairs.Count);
        return new(
            value,
            agree ? statistical : Math.Max(statistical, scatter * Probability.CoverageWidening(freedom)),
            pairs.Count,
            agree
        );
    }
}
