using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Fitting.Models;

/// <summary>Straight line by the median of all pairwise slopes; up to 29 % of the points may be wrong.</summary>
/// <remarks>Sen 1968, JASA 63, 1379. Intercept = median(y) − slope·median(x).</remarks>
/// <param name="Slope">Median slope.</param> <param name="Intercept">Value at x = 0.</param>
/// <param name="Low">Lower limit of the slope.</param> <param name="High">Upper limit of the slope.</param>
internal sealed record TheilSen(double Slope, double Intercept, double Low, double High)
{
    /// <summary>Fits the line.</summary>
    /// <exception cref="ArgumentException">All x are equal.</exception>
    public static TheilSen Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double confidence = 0.95)
    {
        double[] slopes = PairSlopes(x, y);
        if (slopes.Length == 0)
            throw new ArgumentException("All points have the same x; there is no slope.", nameof(x));
        Array.Sort(slopes);
        double slope = OrderStatistics.MedianOfSorted(slopes);
        double intercept = OrderStatistics.Median(y) - slope * OrderStatistics.Median(x);
        double n = x.Length,
            z = Probability.NormalQuantile((1 + confidence) / 2);
        double sigma = Math.Sqrt((n * (n - 1) * (2 * n + 5) - Ties(x) - Ties(y)) / 18);
        int high = Math.Min((int)Math.Round((slopes.Length + z * sigma) / 2), slopes.Length - 1);
        int low = Math.Max((int)Math.Round((slopes.Length - z * sigma) / 2) - 1, 0);
        return new TheilSen(slope, intercept, slopes[low], slopes[high]);
    }

    private static double[] PairSlopes(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = new List<double>(x.Length * (x.Length - 1) / 2);
        for (int i = 0; i < x.Length; i++)
        for (int j = i + 1; j < x.Length; j++)
            if (x[j] != x[i])
                slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
        return [.. slopes];
    }

    private static double Ties(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var group in values.ToArray().GroupBy(v => v))
        {
            double k = group.Count();
            sum += k * (k - 1) * (2 * k + 5);
        }
        return sum;
    }
}
