namespace SensorProfile.Fitting.Statistics;

/// <summary>
/// Tukey's biweight: location and scale that outliers beyond c MADs do not touch (Beers, Flynn and Gebhardt 1990, AJ
/// 100, 32).
/// </summary>
internal static class Biweight
{
    /// <summary>
    /// One-step location from the median: M + Σ(x − M)(1 − u²)² / Σ(1 − u²)², u = (x − M)/(c·MAD), |u| &lt; 1.
    /// </summary>
    public static double Location(ReadOnlySpan<double> values, double tuning = 6)
    {
        double median = OrderStatistics.Median(values),
            mad = OrderStatistics.MedianAbsoluteDeviation(values, median);
        if (mad == 0)
            return median;
        double above = 0,
            below = 0;
        foreach (double value in values)
        {
            double u = (value - median) / (tuning * mad);
            if (Math.Abs(u) >= 1)
                continue;
            double weight = (1 - u * u) * (1 - u * u);
            above += (value - median) * weight;
            below += weight;
        }
        return median + above / below;
    }

    /// <summary>
    /// Scale √n·√Σ(x − M)²(1 − u²)⁴ / |Σ(1 − u²)(1 − 5u²)|; zero when more than half of the values are equal.
    /// </summary>
    public static double Scale(ReadOnlySpan<double> values, double tuning = 9)
    {
        double median = OrderStatistics.Median(values),
            mad = OrderStatistics.MedianAbsoluteDeviation(values, median);
        if (mad == 0)
            return 0;
        double above = 0,
            below = 0;
        foreach (double value in values)
        {
            double d = value - median,
                u = d / (tuning * mad);
            if (Math.Abs(u) >= 1)
                continue;
            double v = 1 - u * u;
            above += d * d * v * v * v * v;
            below += v * (1 - 5 * u * u);
        }
        return Math.Sqrt(values.Length * above) / Math.Abs(below);
    }
}
