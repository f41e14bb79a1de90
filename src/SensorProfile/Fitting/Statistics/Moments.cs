namespace SensorProfile.Fitting.Statistics;

/// <summary>Mean and spread of a sample, computed in two passes with compensated sums.</summary>
/// <remarks>
/// The one-pass form Σx² − (Σx)²/n loses every digit when the mean is large against the spread (NIST StRD, NumAcc4), so
/// it is not used.
/// </remarks>
/// <param name="Count">Number of values n.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="SumOfSquares">Σ(x − mean)².</param>
internal readonly record struct Moments(long Count, double Mean, double SumOfSquares)
{
    /// <summary>Σ(x − mean)²/(n − 1); zero for a single value.</summary>
    public double Variance => Count > 1 ? SumOfSquares / (Count - 1) : 0;

    /// <summary>Σ(x − mean)²/n.</summary>
    public double PopulationVariance => SumOfSquares / Count;

    /// <summary>Square root of <see cref="Variance"/>.</summary>
    public double StandardDeviation => Math.Sqrt(Variance);

    /// <summary>Standard uncertainty of the mean of independent values, s/√n.</summary>
    public double MeanUncertainty => Math.Sqrt(Variance / Count);

    /// <summary>Moments of the values.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static Moments Of(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
            throw new ArgumentException("The mean of no values is not defined.", nameof(values));
        double mean = Sum(values) / values.Length;
        double squares = 0,
            squaresLost = 0,
            offset = 0;
        foreach (double value in values)
        {
            double d = value - mean;
            offset += d;
            Add(ref squares, ref squaresLost, d * d);
        }
        // The rounding of the mean is taken out again (Chan, Golub and LeVeque 1983, Am. Stat. 37, 242).
        return new Moments(values.Length, mean, squares + squaresLost - offset * offset / values.Length);
    }

    /// <summary>
    /// Compensated sum (Neumaier 1974, Z. angew. Math. Mech. 54, 39): correct to the last digit or two whatever the
    /// order.
    /// </summary>
    public static double Sum(ReadOnlySpan<double> values)
    {
        double sum = 0,
            lost = 0;
        foreach (double value in values)
            Add(ref sum, ref lost, value);
        return sum + lost;
    }

    /// <summary>Lag-one autocorrelation Σ(x_i − m)(x_{i+1} − m)/Σ(x_i − m)²; NaN for constant values.</summary>
    public static double LagOneAutocorrelation(ReadOnlySpan<double> values)
    {
        Moments moments = Of(values);
        double sum = 0,
            lost = 0;
        for (int i = 1; i < values.Length; i++)
            Add(ref sum, ref lost, (values[i - 1] - moments.Mean) * (values[i] - moments.Mean));
        return (sum + lost) / moments.SumOfSquares;
    }

    private static void Add(ref double sum, ref double lost, double value)
    {
        double next = sum + value;
        lost += Math.Abs(sum) >= Math.Abs(value) ? sum - next + value : value - next + sum;
        sum = next;
    }
}
