namespace SensorProfile.Fitting.Models;

/// <summary>Result of a weighted nonlinear least-squares fit.</summary>
/// <param name="Parameters">Best estimates.</param>
/// <param name="Covariance">(JᵀWJ)⁻¹ at the minimum, the stated uncertainties taken as true; infinite where a parameter
/// has no effect.</param>
/// <param name="ChiSquared">Σ((y − f)/u)² at the minimum.</param>
/// <param name="DegreesOfFreedom">Points minus parameters.</param>
/// <param name="Converged">Whether the gradient vanished within rounding, or no step could improve the fit any
/// further.</param>
/// <param name="Iterations">Steps tried.</param>
/// <param name="Condition">Condition number of the Jacobian with its columns scaled to unit length.</param>
internal sealed record NonlinearFit(
    double[] Parameters,
    double[,] Covariance,
    double ChiSquared,
    int DegreesOfFreedom,
    bool Converged,
    int Iterations,
    double Condition
)
{
    /// <summary>Standard uncertainty of a parameter from the stated uncertainties.</summary>
    public double Uncertainty(int parameter) => Math.Sqrt(Covariance[parameter, parameter]);
}
