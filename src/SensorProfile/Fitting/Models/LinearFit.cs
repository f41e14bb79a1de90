namespace SensorProfile.Fitting.Models;

/// <summary>Result of a weighted linear least-squares fit.</summary>
/// <param name="Parameters">Best estimates, one per column of the design.</param>
/// <param name="Covariance">Covariance when the stated uncertainties are taken as true ("absolute"): (XᵀWX)⁻¹, W =
/// 1/u².</param>
/// <param name="ChiSquared">Σ((y − Xp)/u)² at the minimum.</param>
/// <param name="DegreesOfFreedom">Points minus parameters.</param>
/// <param name="Condition">Condition number of the weighted design with its columns scaled to unit length.</param>
internal sealed record LinearFit(
    double[] Parameters,
    double[,] Covariance,
    double ChiSquared,
    int DegreesOfFreedom,
    double Condition
)
{
    /// <summary>
    /// χ² per degree of freedom; expected to be 1 when the stated uncertainties are right. Zero without degrees of
    /// freedom.
    /// </summary>
    public double ReducedChiSquared => DegreesOfFreedom > 0 ? ChiSquared / DegreesOfFreedom : 0;

    /// <summary>Probability of a larger χ² by chance; 1 without degrees of freedom.</summary>
    public double Probability => Statistics.Probability.ChiSquaredTail(ChiSquared, DegreesOfFreedom);

    /// <summary>Standard uncertainty of a parameter from the stated uncertainties.</summary>
    public double Uncertainty(int parameter) => Math.Sqrt(Covariance[parameter, parameter]);
}
