namespace SensorProfile.Fitting.Models;

/// <summary>Propagation of uncertainty to first order (JCGM 100:2008, clause 5.2 and annex G.4).</summary>
internal static class ErrorPropagation
{
    /// <summary>Variance of a quantity with the given sensitivities ∂f/∂x: gᵀCg.</summary>
    public static double Variance(ReadOnlySpan<double> sensitivities, double[,] covariance)
    {
        double variance = 0;
        for (int i = 0; i < sensitivities.Length; i++)
        for (int j = 0; j < sensitivities.Length; j++)
            variance += sensitivities[i] * covariance[i, j] * sensitivities[j];
        return Math.Max(0, variance); // rounding may leave −1e-20 for a perfect correlation
    }

    /// <summary>Value and standard uncertainty of f, with sensitivities by central differences.</summary>
    public static (double Value, double Uncertainty) Propagate(
        Func<double[], double> function,
        double[] values,
        double[,] covariance
    )
    {
        double[] sensitivities = Sensitivities(function, values, covariance);
        return (function(values), Math.Sqrt(Variance(sensitivities, covariance)));
    }

    /// <summary>
    /// ∂f/∂x_i by central differences with a step of ∛ε times the value (times its uncertainty when the value is zero).
    /// </summary>
    public static double[] Sensitivities(Func<double[], double> function, double[] values, double[,] covariance)
    {
        var sensitivities = new double[values.Length];
        var shifted = (double[])values.Clone();
        for (int i = 0; i < values.Length; i++)
        {
            double size = values[i] != 0 ? Math.Abs(values[i]) : Math.Sqrt(covariance[i, i]);
            if (size == 0)
                size = 1;
            double high = values[i] + 6e-6 * size,
                low = values[i] - 6e-6 * size;
            shifted[i] = high;
            double above = function(shifted);
            shifted[i] = low;
            double below = function(shifted);
            shifted[i] = values[i];
            sensitivities[i] = (above - below) / (high - low);
        }
        return sensitivities;
    }

    /// <summary>
    /// Effective degrees of freedom of a sum of independent parts (Welch and Satterthwaite): u_c⁴ / Σ(u_i⁴/ν_i);
    /// infinite ν allowed.
    /// </summary>
    public static double EffectiveDegreesOfFreedom(
        ReadOnlySpan<double> uncertainties,
        ReadOnlySpan<double> degreesOfFreedom
    )
    {
        double variance = 0,
            below = 0;
        for (int i = 0; i < uncertainties.Length; i++)
        {
            double square = uncertainties[i] * uncertainties[i];
            variance += square;
            below += square * square / degreesOfFreedom[i];
        }
        return below > 0 ? variance * variance / below : double.PositiveInfinity;
    }
}
