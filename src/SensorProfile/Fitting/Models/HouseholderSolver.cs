using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace SensorProfile.Fitting.Models;

/// <summary>Least-squares steps and covariances from a Jacobian by orthogonal factorisation.</summary>
internal static class HouseholderSolver
{
    /// <summary>Solves min ‖r − Jδ‖² + ‖d·Dδ‖².</summary>
    /// <param name="jacobian">J, n × k.</param>
    /// <param name="residual">r.</param>
    /// <param name="scale">Diagonal of D.</param>
    /// <param name="damping">d; 0 for an undamped Gauss–Newton step.</param>
    /// <param name="predicted">Predicted fall of ‖r‖² for a linear model: ‖Jδ‖² + 2d²‖Dδ‖².</param>
    public static double[] Damped(
        double[,] jacobian,
        double[] residual,
        double[] scale,
        double damping,
        out double predicted
    )
    {
        int n = residual.Length,
            k = scale.Length,
            rows = damping > 0 ? n + k : n;
        var lengths = new double[k];
        var matrix = Matrix<double>.Build.Dense(rows, k);
        for (int j = 0; j < k; j++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
                sum += jacobian[i, j] * jacobian[i, j];
            lengths[j] = sum > 0 ? Math.Sqrt(sum) : 1;
            for (int i = 0; i < n; i++)
                matrix[i, j] = jacobian[i, j] / lengths[j];
            if (damping > 0)
                matrix[n + j, j] = damping * Math.Max(scale[j], 1e-300) / lengths[j];
        }
        var target = Vector<double>.Build.Dense(rows);
        for (int i = 0; i < n; i++)
            target[i] = residual[i];
        var solution = matrix.QR(QRMethod.Thin).Solve(target);
        var moved = matrix * solution;
        double linear = 0,
            damped = 0;
        for (int i = 0; i < rows; i++)
            if (i < n)
                linear += moved[i] * moved[i];
            else
                damped += moved[i] * moved[i];
        predicted = linear + 2 * damped;
        var step = new double[k];
        for (int j = 0; j < k; j++)
            step[j] = solution[j] / lengths[j];
        return step;
    }

    /// <summary>
    /// (JᵀJ)⁻¹ from the triangular factor of J with unit columns; infinite variances when J is singular.
    /// </summary>
    public static double[,] Covariance(double[,] jacobian, out double condition)
    {
        int n = jacobian.GetLength(0),
            k = jacobian.GetLength(1);
        var matrix = Matrix<double>.Build.DenseOfArray(jacobian);
        var lengths = new double[k];
        for (int j = 0; j < k; j++)
        {
            lengths[j] = matrix.Column(j).L2Norm();
            if (lengths[j] > 0)
                matrix.SetColumn(j, matrix.Column(j) / lengths[j]);
        }
        var triangle = matrix.QR(QRMethod.Thin).R;
        condition = triangle.ConditionNumber();
        var covariance = new double[k, k];
        if (!(condition < 1e15))
        {
            for (int j = 0; j < k; j++)
                covariance[j, j] = double.PositiveInfinity;
            return covariance;
        }
        var inverse = triangle.Inverse();
        for (int i = 0; i < k; i++)
        for (int j = 0; j <= i; j++)
            covariance[i, j] = covariance[j, i] = inverse.Row(i) * inverse.Row(j) / (lengths[i] * lengths[j]);
        return covariance;
    }
}
