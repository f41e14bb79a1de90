using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace SensorProfile.Fitting.Models;

/// <summary>Weighted linear least squares.</summary>
/// <remarks>Minimises Σ((y − Xp)/u)² by a Householder QR factorisation of the weighted design, never by the normal
/// equations, which square the condition number. Columns are scaled to unit length first. Covariance (RᵀR)⁻¹ = (XᵀWX)⁻¹
/// (Golub and Van Loan, Matrix Computations, ch. 5).</remarks>
internal static class LinearLeastSquares
{
    /// <summary>Fits y = Σ p_j·column_j.</summary>
    /// <param name="columns">The design, one array per parameter, each as long as <paramref name="y"/>.</param>
    /// <param name="y">Observed values.</param>
    /// <param name="uncertainties">Standard uncertainties of y, all positive; empty for an unweighted fit (all
    /// 1).</param>
    /// <exception cref="ArgumentException">Lengths differ, an uncertainty is not positive, there are fewer points than
    /// parameters, or columns are linearly dependent.</exception>
    public static LinearFit Fit(
        IReadOnlyList<double[]> columns,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> uncertainties = default
    )
    {
        int n = y.Length,
            k = columns.Count;
        Check(columns, n, uncertainties);
        var weighted = Matrix<double>.Build.Dense(n, k);
        var target = Vector<double>.Build.Dense(n);
        for (int i = 0; i < n; i++)
        {
            double weight = uncertainties.IsEmpty ? 1 : 1 / uncertainties[i];
            target[i] = y[i] * weight;
            for (int j = 0; j < k; j++)
                weighted[i, j] = columns[j][i] * weight;
        }
        return Solve(weighted, target);
    }

    private static LinearFit Solve(Matrix<double> weighted, Vector<double> target)
    {
        int n = weighted.RowCount,
            k = weighted.ColumnCount;
        var lengths = new double[k];
        for (int j = 0; j < k; j++)
        {
            lengths[j] = weighted.Column(j).L2Norm();
            if (!(lengths[j] > 0))
                throw new ArgumentException(
                    $"Column {j} of the design is zero: its parameter has no effect.",
                    nameof(weighted)
                );
            weighted.SetColumn(j, weighted.Column(j) / lengths[j]);
        }
        var qr = weighted.QR(QRMethod.Thin);
        double condition = qr.R.ConditionNumber();
        if (!(condition < 1e15))
            throw new ArgumentException(
                "The columns of the design depend on each other; the parameters cannot be told apart.",
                nameof(weighted)
            );
        var scaled = qr.Solve(target);
        // One step of iterative refinement: solve again for the residual of the first solution.
        scaled += qr.Solve(target - weighted * scaled);
        var residual = target - weighted * scaled;
        var inverse = qr.R.Inverse();
        var covariance = new double[k, k];
        for (int i = 0; i < k; i++)
        for (int j = 0; j <= i; j++)
            covariance[i, j] = covariance[j, i] = inverse.Row(i) * inverse.Row(j) / (lengths[i] * lengths[j]);
        var parameters = new double[k];
        for (int j = 0; j < k; j++)
            parameters[j] = scaled[j] / lengths[j];
        return new LinearFit(parameters, covariance, residual * residual, n - k, condition);
    }

    private static void Check(IReadOnlyList<double[]> columns, int n, ReadOnlySpan<double> uncertainties)
    {
        if (columns.Count == 0)
            throw new ArgumentException("A fit needs at least one parameter.", nameof(columns));
        if (n < columns.Count)
            throw new ArgumentException($"{n} points cannot determine {columns.Count} parameters.", nameof(columns));
        foreach (double[] column in columns)
            if (column.Length != n)
                throw new ArgumentException($"A column has {column.Length} values, the data {n}.", nameof(columns));
        if (uncertainties.IsEmpty)
            return;
        if (uncertainties.Length != n)
            throw new ArgumentException($"{uncertainties.Length} uncertainties for {n} values.", nameof(uncertainties));
        foreach (double u in uncertainties)
            if (!(u > 0) || double.IsInfinity(u))
                throw new ArgumentException("Every uncertainty must be positive and finite.", nameof(uncertainties));
    }
}
