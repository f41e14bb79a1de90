using System.Buffers;

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

    /// <summary>√(π/2): standard error of the median over that of the mean, for many normal values.</summary>
    public const double MedianToMeanError = 1.2533141373155003;

    private const int FewToSort = 48; // below this, sorting is faster than selecting

    /// <summary>The middle value, or the mean of the two middle values.</summary>
    public static double Median(ReadOnlySpan<double> values)
    {
        double[] copy = ArrayPool<double>.Shared.Rent(values.Length);
        values.CopyTo(copy);
        double median = MedianInPlace(copy.AsSpan(0, values.Length));
        ArrayPool<double>.Shared.Return(copy);
        return median;
    }

    /// <summary>Median absolute deviation from the median, unscaled.</summary>
    public static double MedianAbsoluteDeviation(ReadOnlySpan<double> values) =>
        MedianAbsoluteDeviation(values, Median(values));

    /// <summary>Median absolute deviation scaled to σ of a normal distribution.</summary>
    public static double MadSigma(ReadOnlySpan<double> values) => MadToSigma * MedianAbsoluteDeviation(values);

    /// <summary>
    /// Quantile by linear interpolation between order statistics, position p·(n − 1) (type 7 of Hyndman and Fan 1996,
    /// Am. Stat. 50, 361).
    /// </summary>
    /// <param name="values">At least one value.</param> <param name="p">0…1.</param>
    public static double Quantile(ReadOnlySpan<double> values, double p) => QuantileOfSorted(Sorted(values), p);

    /// <summary>As <see cref="Quantile"/>, for values already in ascending order.</summary>
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
        double[] distances = ArrayPool<double>.Shared.Rent(values.Length);
        for (int i = 0; i < values.Length; i++)
            distances[i] = Math.Abs(values[i] - centre);
        double median = MedianInPlace(distances.AsSpan(0, values.Length));
        ArrayPool<double>.Shared.Return(distances);
        return median;
    }

    /// <summary>As <see cref="Median"/>, but reorders the values.</summary>
    public static double MedianInPlace(Span<double> values)
    {
        if (values.Length <= FewToSort)
        {
            values.Sort();
            return MedianOfSorted(values);
        }
        int middle = values.Length / 2;
        double upper = Select(values, middle);
        if (values.Length % 2 == 1)
            return upper;
        // selection leaves the smaller values in front; the largest of these is the other middle value
        double lower = values[0];
        foreach (double value in values[1..middle])
            lower = Math.Max(lower, value);
        return (lower + upper) / 2;
    }

    /// <summary>
    /// The value of a rank, counted from 0; moves smaller values in front of it and larger ones behind (Hoare 1961,
    /// median-of-three pivot).
    /// </summary>
    private static double Select(Span<double> values, int rank)
    {
        int low = 0,
            high = values.Length - 1;
        while (high - low > FewToSort)
        {
            double a = values[low],
                b = values[(low + high) >>> 1],
                c = values[high];
            double pivot = Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
            int left = low,
                right = high;
            while (left <= right)
            {
                while (values[left] < pivot)
                    left++;
                while (values[right] > pivot)
                    right--;
                if (left <= right)
                {
                    (values[left], values[right]) = (values[right], values[left]);
                    left++;
                    right--;
                }
            }
            if (rank <= right)
                high = right;
            else if (rank >= left)
                low = left;
            else
                return values[rank];
        }
        values[low..(high + 1)].Sort();
        return values[rank];
    }

    private static double[] Sorted(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        return sorted;
    }
}
