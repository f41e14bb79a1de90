namespace SensorProfile.Fitting.Models;

/// <summary>Small dense covariance matrices: scaling, correlation, propagation.</summary>
internal static class CovarianceMatrix
{
    /// <summary>Every element times <paramref name="factor"/>.</summary>
    public static double[,] Scale(double[,] covariance, double factor)
    {
        int n = covariance.GetLength(0),
            m = covariance.GetLength(1);
        var scaled = new double[n, m];
        for (int i = 0; i < n; i++)
        for (int j = 0; j < m; j++)
            scaled[i, j] = covariance[i, j] * factor;
        return scaled;
    }

    /// <summary>Rows as read-only lists, the form in which profiles store a covariance.</summary>
    public static IReadOnlyList<IReadOnlyList<double>> ToRows(double[,] covariance)
    {
        int n = covariance.GetLength(0),
            m = covariance.GetLength(1);
        var rows = new double[n][];
        for (int i = 0; i < n; i++)
        {
            rows[i] = new double[m];
            for (int j = 0; j < m; j++)
                rows[i][j] = covariance[i, j];
        }
        return rows;
    }

    /// <summary>The reverse of <see cref="ToRows"/>.</summary>
    /// <exception cref="ArgumentException">The rows do not form a square.</exception>
    public static double[,] FromRows(IReadOnlyList<IReadOnlyList<double>> rows)
    {
        var covariance = new double[rows.Count, rows.Count];
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].Count != rows.Count)
                throw new ArgumentException(
                    $"Row {i} of the covariance has {rows[i].Count} elements, expected {rows.Count}.",
                    nameof(rows)
                );
            for (int j = 0; j < rows.Count; j++)
                covariance[i, j] = rows[i][j];
        }
        return covariance;
    }
}
