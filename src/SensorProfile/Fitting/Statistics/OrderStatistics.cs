using MathNet.Numerics.Statistics;

namespace SensorProfile.Fitting.Statistics;

/// <summary>
/// Median, quantiles and median absolute deviation. Values must be numbers (no NaN); they are not reordered.
/// </summary>
internal static class OrderStatistics
{
    /// <summary>1/Φ⁻¹(3/4): turns the MAD of a normal distribution into its standard deviation.</summary>
    public const double MadToSigma = 1.482602218505602;

    /// <summary>1/(2Φ⁻¹(3/4)): turns an interquartile range into a standard deviation.</summary>
    public const double InterquartileToSigma = 0.7413011092528009;

    /// <summary>√(π/2): the standard error of a median against that of the mean, many normal values.</summary>
    public const double MedianToMeanError = 1.2533141373155003;

    private const int FewToSort = 48; // below, sorting is quicker than selecting

    /// <summary>The middle value, or the mean of the two middle values.</summary>
    public static double Median(ReadOnlySpan<double> values) => MedianInPlace(values.ToArray());

    /// <summary>Median absolute deviation from the median, as it is.</summary>
    public static double MedianAbsoluteDeviation(ReadOnlySpan<double> values) =>
        MedianAbsoluteDeviation(values, Median(values));

    /// <summary>Median absolute deviation scaled to a normal distribution's σ.</summary>
    public static double MadSigma(ReadOnlySpan<double> values) => MadToSigma * MedianAbsoluteDeviation(values);

    /// <summary>
    /// Quantile by linear interpolation between order statistics, position p·(n − 1) (type 7 of Hyndman and Fan 1996,
    /// Am. Stat. 50, 361).
    /// </summary>
    /// <param name="values">At least one value.</param> <param name="p">0…1.</param>
    public static double Quantile(ReadOnlySpan<double> values, double p) => QuantileOfSorted(Sorted(values), p);

    /// <summary>As <see cref="Quantile"/>, of values already in ascending order.</summary>
    public static double QuantileOfSorted(ReadOnlySpan<double> sorted, double p)
    {
        if (sorted.IsEmpty)
            throw new ArgumentException("No values have no quantile.", nameof(sorted));
        ArgumentOutOfRangeException.ThrowIfLessThan(p, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(p, 1);
        double position = p * (sorted.Length - 1);
        int below = Math.Min((int)position, sorted.Length - 1),
            above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }

    /// <summary>Median of values already in ascending order.</summary>
    public static double MedianOfSorted(ReadOnlySpan<double> sorted)
    {
        if (sorted.IsEmpty)
            throw new ArgumentException("No values have no median.", nameof(sorted));
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    internal static double MedianAbsoluteDeviation(ReadOnlySpan<double> values, double centre)
    {
        double[] distances = values.ToArray();
        for (int i = 0; i < distances.Length; i++)
            distances[i] = Math.Abs(distances[i] - centre);
        return MedianInPlace(distances);
    }

    /// <summary>As <see cref="Median"/>; the values come out in another order.</summary>
    public static double MedianInPlace(double[] values)
    {
        if (values.Length <= FewToSort)
        {
            Array.Sort(values);
            return MedianOfSorted(values);
        }
        int middle = values.Length / 2; // orders count from 1
        double upper = ArrayStatistics.OrderStatisticInplace(values, middle + 1);
        return values.Length % 2 == 1 ? upper : (ArrayStatistics.OrderStatisticInplace(values, middle) + upper) / 2;
    }

    private static double[] Sorted(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        return sorted;
    }
}
