using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Doubling temperature of pixels as a function of their dark rate.</summary>
internal static class DoublingClasses
{
    private const int MinPixels = 8;

    // The doubling temperature is curved in the law's slope: by noise its median is off by up to about this many times the
    // square of its relative noise (physical cameras simulated, CoverageRun).
    private const double CurvatureBias = 0.5;

    /// <summary>Classes of rate at 1, 2, 5 times powers of ten, from the first with 8 measured pixels.</summary>
    /// <remarks>
    /// Median with standard error 1.2533·σ/√n, σ the robust spread of the class; the median measurement variance is
    /// removed from the reported spread.
    /// </remarks>
    /// <param name="laws">Laws of single pixels.</param>
    public static IReadOnlyList<DoublingByRate> Sort(IEnumerable<MeasuredLaw> laws)
    {
        MeasuredLaw[] usable = [.. laws.Where(l => l.Rate > 0 && l.Uncertainty < 0.25 * l.Doubling)];
        if (usable.Length == 0)
            return [];
        double[] edges = [.. RoundNumbers.Between(usable.Min(l => l.Rate) / 2.5, usable.Max(l => l.Rate) * 2.5)];
        return
        [
            .. edges
                .Zip(edges.Skip(1), (from, to) => (from, to))
                .Select(e => Class(e.from, e.to, [.. usable.Where(l => l.Rate >= e.from && l.Rate < e.to)]))
                .OfType<DoublingByRate>(),
        ];
    }

    private static DoublingByRate? Class(double from, double to, MeasuredLaw[] laws)
    {
        if (laws.Length < MinPixels)
            return null;
        double[] doublings = [.. laws.Select(l => (double)l.Doubling)];
        double median = OrderStatistics.Median(doublings),
            sigma = OrderStatistics.MadSigma(doublings);
        double noise = OrderStatistics.Median([.. laws.Select(l => (double)l.Uncertainty * l.Uncertainty)]);
        var doubling = new Measurement(
            median,
            double.Hypot(
                OrderStatistics.MedianToMeanError * sigma / Math.Sqrt(laws.Length),
                CurvatureBias * noise / median
            ),
            "°C",
            laws.Length,
            "median over pixels of their own temperature laws"
        );
        return new(from, to, doubling, Math.Sqrt(Math.Max(0, sigma * sigma - noise)), laws.Length);
    }
}
