using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Rates that given shares of the pixels do not exceed (quantiles).</summary>
internal static class RateQuantiles
{
    private static readonly double[] shares = [0.5, 0.9, 0.95, 0.98, 0.99, 0.999, 0.9999];

    /// <summary>Quantiles of the map, with the noise of single pixels removed from the spread.</summary>
    /// <remarks>Noise u widens a normal core of spread s to √(s² + u²), so that q − median = z·√(s² + u²); the
    /// noise-free quantile is median + √((q − median)² − z²u²), z the normal quantile of the share. In the tail of hot
    /// pixels, q − median is far larger than z·u and nothing changes. Uncertainty: that of an order statistic (half the
    /// distance between the quantiles at p ± √(p(1 − p)/n)), half the correction, and the part common to all pixels, in
    /// quadrature.</remarks>
    /// <param name="rates">Map, e-/px/s.</param>
    /// <param name="noise">Uncertainty of the rate of a typical pixel, e-/px/s.</param>
    /// <param name="common">Relative uncertainty of the scale (gain, typical rate).</param>
    public static IReadOnlyList<RateQuantile> Measure(ReadOnlySpan<float> rates, double noise, double common)
    {
        long n = OrderedRanks.Count(rates);
        if (n == 0)
            return [];
        long Place(double p) => (long)Math.Clamp(Math.Round(p * (n - 1)), 0, n - 1);
        double Step(double p) => Math.Sqrt(p * (1 - p) / n);
        long[] places =
        [
            .. shares
                .SelectMany(p => (double[])[p, Math.Min(1, p + Step(p)), Math.Max(0, p - Step(p))])
                .Select(Place)
                .Distinct(),
        ];
        float[] values = OrderedRanks.Select(rates, places);
        double At(double p) => values[Array.IndexOf(places, Place(p))];
        double median = At(0.5);
        RateQuantile Quantile(double p)
        {
            double raw = At(p),
                z = p == 0.5 ? 0 : Probability.NormalQuantile(p),
                step = Step(p);
            double value = median + Math.Sqrt(Math.Max(0, (raw - median) * (raw - median) - z * z * noise * noise));
            double sampling = (At(Math.Min(1, p + step)) - At(Math.Max(0, p - step))) / 2,
                correction = (raw - value) / 2;
            double doubt = Math.Sqrt(sampling * sampling + correction * correction + common * value * (common * value));
            return new(p, new(value, doubt, "e-/px/s", n, "quantile over pixels, single-pixel noise removed"));
        }
        return [.. shares.Where(p => (1 - p) * n >= 3).Select(Quantile)];
    }
}
