using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>
/// Median and robust standard deviation of a whole map, from the values themselves; NaN values are left out.
/// </summary>
internal static class RobustSpread
{
    /// <summary>
    /// Asymptotic efficiency of the MAD for normal values: the variance it gives has the relative standard error
    /// √(2/(0.3675·n)) (Rousseeuw and Croux 1993, JASA 88, 1273).
    /// </summary>
    public const double Efficiency = 0.3675;

    // share of the deviation: means of the same codes differ only by rounding
    private const double SameValue = 1e-4;

    /// <summary>The robust standard deviation about the median.</summary>
    /// <remarks>
    /// A mean of n frames of integer codes takes values 1/n apart, and so does its median absolute deviation: an error
    /// of several per cent in variance. It is therefore interpolated in the mid-distribution function P(x &lt; v) + P(x
    /// = v)/2 (Ma, Genton and Parzen 2011, Ann. Inst. Stat. Math. 63, 227), which gives the ordinary median for values
    /// without steps.
    /// </remarks>
    public static double Measure(ReadOnlySpan<float> map)
    {
        double[] deviations = Finite(map);
        double centre = OrderStatistics.Median(deviations);
        for (int i = 0; i < deviations.Length; i++)
            deviations[i] = Math.Abs(deviations[i] - centre);
        return OrderStatistics.MadToSigma * MidMedian(deviations);
    }

    private static double MidMedian(double[] values)
    {
        double middle = OrderStatistics.Median(values),
            same = SameValue * middle,
            at = Below(values, middle, same);
        if (at == 0.5)
            return middle;
        double other =
            at > 0.5
                ? values.Where(v => v < middle - same).DefaultIfEmpty(middle).Max()
                : values.Where(v => v > middle + same).DefaultIfEmpty(middle).Min();
        double there = Below(values, other, same);
        return there == at ? middle : middle + (other - middle) * (0.5 - at) / (there - at);
    }

    /// <summary>Share of the values below one, counting equal values half.</summary>
    private static double Below(double[] values, double value, double same)
    {
        long twice = 0;
        foreach (double v in values)
            twice +=
                v < value - same ? 2
                : v <= value + same ? 1
                : 0;
        return twice / (2.0 * values.Length);
    }

    /// <summary>The median.</summary>
    public static double Median(ReadOnlySpan<float> map) => OrderStatistics.Median(Finite(map));

    private static double[] Finite(ReadOnlySpan<float> map)
    {
        var values = new double[map.Length];
        int n = 0;
        foreach (float v in map)
            if (float.IsFinite(v))
                values[n++] = v;
        return n == 0 ? throw new IOException("a picture holds no number at all") : values[..n];
    }
}
