namespace SensorProfile.Fitting.Models;

/// <summary>Polynomials by weighted least squares, lowest power first.</summary>
internal static class Polynomial
{
    /// <summary>Fits y = p₀ + p₁x + … + p_d·x^d.</summary>
    /// <param name="x">Abscissae.</param> <param name="y">Observed values.</param>
    /// <param name="uncertainties">Standard uncertainties of y; empty for an unweighted fit.</param>
    /// <param name="degree">d, at least 0.</param>
    public static LinearFit Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> uncertainties,
        int degree
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegative(degree);
        var columns = new double[degree + 1][];
        for (int power = 0; power <= degree; power++)
        {
            columns[power] = new double[x.Length];
            for (int i = 0; i < x.Length; i++)
                columns[power][i] = power == 0 ? 1 : columns[power - 1][i] * x[i];
        }
        return LinearLeastSquares.Fit(columns, y, uncertainties);
    }

    /// <summary>Value at x (Horner).</summary>
    public static double At(ReadOnlySpan<double> coefficients, double x)
    {
        double value = 0;
        for (int i = coefficients.Length - 1; i >= 0; i--)
            value = value * x + coefficients[i];
        return value;
    }
}
