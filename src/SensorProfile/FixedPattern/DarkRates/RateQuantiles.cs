using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Rates that given shares of the pixels do not exceed (quantiles).</summary>
internal static class RateQuantiles
{
    private const double NoisesAbove = 12; // how far above the median noise still blurs

    private static readonly double[] shares = [0.5, 0.9, 0.95, 0.98, 0.99, 0.995, 0.999, 0.9999];

    /// <summary>Quantiles of the map with the noise of the single pixels taken out of the spread.</summary>
    /// <remarks>
    /// The noise is taken out by <see cref="NoiseFreeDistribution"/>; where hot pixels make the tail, far apart against their noise,
    /// the quantile is that of the map. Uncertainty, in quadrature: pixels that noise carries across the quantile, whose
    /// number scatters by √(n·f·u/√π) for a density f and a noise u of the pixels there, so that the quantile scatters by
    /// √(u/(√π·n·f)); a third of the correction; what all pixels share. It is that of this sensor, not of another one of
    /// the same model: which pixels are hot is no accident of the measurement.
    /// </remarks>
    /// <param name="rates">Map, e-/px/s.</param>
    /// <param name="uncertainties">Of the single pixels, e-/px/s.</param>
    /// <param name="noise">Uncertainty of a typical pixel's rate, e-/px/s.</param>
    /// <param name="common">Relative uncertainty of the scale (gain, typical rate).</param>
    /// <param name="offset">By how much the rates of all pixels may be off, e-/px/s.</param>
    public static IReadOnlyList<RateQuantile> Measure(
        float[] rates,
        float[] uncertainties,
        double noise,
        double common,
        double offset = 0
    )
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
                .Append(0)
                .Select(Place)
                .Distinct(),
        ];
        float[] values = OrderedRanks.Select(rates, places);
        double At(double p) => values[Array.IndexOf(places, Place(p))];
        double median = At(0.5),
            top = Math.Max(median + 2 * (At(0.9) - median), median + NoisesAbove * noise);
        NoiseFreeDistribution? free = NoiseFreeDistribution.Find(rates, noise, At(0), Math.Min(top, At(shares[^1])), n);
        RateQuantile Quantile(double p)
        {
            double raw = At(p),
                step = Step(p),
                value = free?.At(p) is double found && double.IsFinite(found) ? found : raw;
            double between = At(Math.Min(1, p + step)) - At(Math.Max(0, p - step)),
                density = 2 * step / Math.Max(between, double.Epsilon),
                own = Math.Max(noise, NoiseAbout(rates, uncertainties, raw, between)),
                carried = Math.Sqrt(own / (Math.Sqrt(Math.PI) * n * density)),
                correction = (raw - value) / 3,
                scale = common * value,
                doubt = Math.Sqrt(carried * carried + correction * correction + scale * scale + offset * offset);
            return new(p, new(value, doubt, "e-/px/s", n, "quantile over pixels, noise of the single pixel taken out"));
        }
        return [.. shares.Where(p => (1 - p) * n >= 3).Select(Quantile)];
    }

    /// <summary>Mean uncertainty of the pixels about a rate; 0 where there are none.</summary>
    private static double NoiseAbout(float[] rates, float[] uncertainties, double rate, double reach)
    {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < rates.Length; i++)
            if (Math.Abs(rates[i] - rate) <= reach && !float.IsNaN(uncertainties[i]))
                (sum, count) = (sum + uncertainties[i], count + 1);
        return count > 0 ? sum / count : 0;
    }
}
