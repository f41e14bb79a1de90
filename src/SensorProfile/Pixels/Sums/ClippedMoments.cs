using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Moments of a sample without its outliers: values more than k standard deviations from the mean are left out until
/// nothing changes.
/// </summary>
/// <remarks>The first limits are median ± k·w, with w the larger of 1.4826·MAD and the half-width that holds 68.27 % of
/// the sample, so neither outliers nor coarse codes mislead it; every later pass uses mean ± k·s of what the previous
/// pass kept. A normal sample keeps the share 1 − 2kφ(k)/(2Φ(k) − 1) of its variance: at k = 5 it comes out low by
/// 1.5e-5.</remarks>
/// <param name="Count">Samples kept, n.</param>
/// <param name="Excluded">Samples left out.</param>
/// <param name="Lowest">Lowest value kept.</param>
/// <param name="Highest">Highest value kept.</param>
/// <param name="Mean">Mean of the kept samples.</param>
/// <param name="Variance">Their population variance (divisor n), from exact sums.</param>
/// <param name="ExcessKurtosis">m₄/m₂² − 3 of the kept samples; 0 when they are all equal.</param>
internal sealed record ClippedMoments(
    long Count,
    long Excluded,
    int Lowest,
    int Highest,
    double Mean,
    double Variance,
    double ExcessKurtosis
)
{
    private const double NormalShare = 0.6826894921370859; // within 1 σ

    /// <summary>
    /// Standard error of the unbiased variance n/(n−1)·<see cref="Variance"/>: σ²·√(2/(n−1) + κ/n), κ the excess
    /// kurtosis.
    /// </summary>
    public double StandardErrorOfVariance =>
        Count < 2
            ? double.NaN
            : Variance * Count / (Count - 1) * Math.Sqrt(Math.Max(0, 2.0 / (Count - 1) + ExcessKurtosis / Count));

    /// <summary>Clips a histogram.</summary>
    /// <param name="histogram">At least one sample.</param>
    /// <param name="limit">k; infinity disables the clip.</param>
    /// <param name="mostPasses">Maximum number of passes, even if the clip still changes.</param>
    public static ClippedMoments Measure(IntegerHistogram histogram, double limit = 5, int mostPasses = 100)
    {
        if (histogram.Count == 0)
            throw new ArgumentException("An empty histogram has no moments.", nameof(histogram));
        double centre = histogram.Median,
            width = Width(histogram);
        (int Low, int High) kept = (histogram.Minimum, histogram.Maximum);
        for (int pass = 0; pass < mostPasses; pass++)
        {
            (int, int) next = Limits(histogram, centre, limit * width);
            if (next == kept && pass > 0)
                break;
            kept = next;
            (_, centre, double variance) = Sums(histogram, kept.Low, kept.High);
            width = Math.Sqrt(variance);
        }
        return Between(histogram, kept.Low, kept.High);
    }

    /// <summary>Moments of the values from <paramref name="low"/> to <paramref name="high"/>.</summary>
    private static ClippedMoments Between(IntegerHistogram histogram, int low, int high)
    {
        var (count, mean, variance) = Sums(histogram, low, high);
        double fourth = 0;
        for (int value = low; value <= high; value++)
        {
            double square = (value - mean) * (value - mean);
            fourth += histogram[value] * (square * square);
        }
        double kurtosis = variance > 0 ? fourth / count / (variance * variance) - 3 : 0;
        return new ClippedMoments(count, histogram.Count - count, low, high, mean, variance, kurtosis);
    }

    private static (long Count, double Mean, double Variance) Sums(IntegerHistogram histogram, int low, int high)
    {
        long count = 0;
        Int128 sum = 0,
            squares = 0;
        for (int value = low; value <= high; value++)
        {
            long times = histogram[value];
            if (times == 0)
                continue;
            count += times;
            sum += (Int128)times * value;
            squares += (Int128)times * ((long)value * value);
        }
        return (count, (double)sum / count, (double)(count * squares - sum * sum) / ((double)count * count));
    }

    private static double Width(IntegerHistogram histogram)
    {
        double width = Math.Max(
            OrderStatistics.MadToSigma * histogram.MedianAbsoluteDeviation,
            histogram.DistanceHolding(NormalShare)
        );
        return width > 0 ? width : Math.Sqrt(histogram.Variance); // more than 68 % of the sample is one value
    }

    private static (int Low, int High) Limits(IntegerHistogram histogram, double centre, double distance)
    {
        double low = Math.Max(histogram.Minimum, Math.Ceiling(centre - distance)),
            high = Math.Min(histogram.Maximum, Math.Floor(centre + distance));
        return low <= high ? ((int)low, (int)high) : (histogram.Minimum, histogram.Maximum);
    }
}
