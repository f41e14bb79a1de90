using MathNet.Numerics.LinearAlgebra;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>Normal deviates with a given covariance.</summary>
internal static class CorrelatedDeviates
{
    /// <summary>
    /// One draw: D·V·√Λ·z, where V Λ Vᵀ is the correlation matrix and D holds the standard deviations.
    /// </summary>
    /// <remarks>
    /// The correlation matrix is decomposed, not the covariance: amplitudes and energies differ by many powers of ten.
    /// A matrix that is singular to within rounding is tolerated.
    /// </remarks>
    internal static double[] Draw(double[,] covariance, Func<double> standardNormal)
    {
        int n = covariance.GetLength(0);
        double[] sigma = [.. Enumerable.Range(0, n).Select(i => Math.Sqrt(Math.Max(covariance[i, i], 0)))];
        var correlation = Matrix<double>.Build.Dense(n, n, (i, j) => i == j ? 1
            : sigma[i] > 0 && sigma[j] > 0 ? covariance[i, j] / (sigma[i] * sigma[j])
            : 0);
        var split = correlation.Evd(Symmetricity.Symmetric);
        double[] z = [.. Enumerable.Range(0, n).Select(_ => standardNormal())];
        double[] draw = new double[n];
        for (int i = 0; i < n; i++)
        for (int k = 0; k < n; k++)
            draw[i] += sigma[i] * split.EigenVectors[i, k] * Math.Sqrt(Math.Max(split.EigenValues[k].Real, 0)) * z[k];
        return draw;
    }
}
