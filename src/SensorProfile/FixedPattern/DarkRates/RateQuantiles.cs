using MathNet.Numerics.Distributions;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Rates that given shares of the pixels do not exceed (quantiles).</summary>
internal static class RateQuantiles
{
    private const double NoisesAbove = 12; // how far above the median noise still blurs
    private const double ShiftReach = 6; // noises to either side from which noise carries pixels across a rate
    private const int MaxAbout = 20_000; // pixels about a rate that are looked at
    private const int Halvings = 16; // of twelve noises: to 0.0002 of one

    private static readonly double[] shares = [0.5, 0.9, 0.95, 0.98, 0.99, 0.995, 0.999, 0.9999];

    /// <summary>Quantiles of the map with the noise of the single pixels taken out of the spread.</summary>
    /// <remarks>
    /// The noise is taken out by <see cref="NoiseFreeDistribution"/>, whose replicas say how far noise moves the quantile; a
    /// third of the correction is added. Where hot pixels make the tail, far apart against their noise, the quantile is that
    /// of the map: pixels that noise carries across it number √(n·f·u/√π) for a density f and a noise u of the pixels there,
    /// so that it scatters by √(u/(√π·n·f)); and by as much as the map's noise, put on once more, moves it, noise may have
    /// moved it already (the first term of an extrapolation to no noise: Cook and Stefanski 1994, J. Am. Stat. Assoc. 89,
    /// 1314). That counts where the density breaks off, between ordinary pixels and defects. In quadrature with what all
    /// pixels share. The uncertainty is that of this sensor, not of another one of the same model: which pixels are hot is
    /// no accident of the measurement.
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
        NoiseFreeDistribution? free = NoiseFreeDistribution.Find(
            rates,
            uncertainties,
            noise,
            At(0),
            Math.Min(top, At(shares[^1])),
            n
        );
        RateQuantile Quantile(double p)
        {
            double raw = At(p),
                found = free?.At(p) ?? double.NaN,
                scatter = free?.Scatter(p) ?? double.NaN;
            bool inGrid = double.IsFinite(found) && double.IsFinite(scatter);
            double value = inGrid ? found : raw,
                own = inGrid ? double.Hypot(scatter, (raw - value) / 3) : OfTheTail(p, raw),
                scale = common * value,
                doubt = Math.Sqrt(own * own + scale * scale + offset * offset);
            return new(p, new(value, doubt, "e-/px/s", n, "quantile over pixels, noise of the single pixel taken out"));
        }
        double OfTheTail(double p, double raw)
        {
            double step = Step(p),
                between = At(Math.Min(1, p + step)) - At(Math.Max(0, p - step)),
                density = 2 * step / Math.Max(between, double.Epsilon),
                about = Math.Max(noise, NoiseAbout(rates, uncertainties, raw, between)),
                carried = Math.Sqrt(about / (Math.Sqrt(Math.PI) * n * density));
            return double.Hypot(carried, Shift(rates, uncertainties, raw, ShiftReach * about, noise));
        }
        return [.. shares.Where(p => (1 - p) * n >= 3).Select(Quantile)];
    }

    /// <summary>
    /// By how much noise, put on once more, moves a quantile: from the rate to where Σ Φ((r − x)/u), over the pixels about it,
    /// is the number of them above the rate. An even sample of many pixels serves as well.
    /// </summary>
    private static double Shift(float[] rates, float[] uncertainties, double rate, double reach, double noise)
    {
        List<(double Rate, double Noise)> about = [];
        long seen = 0,
            every = Math.Max(1, CountWithin(rates, rate, reach) / MaxAbout);
        for (int i = 0; i < rates.Length; i++)
            if (Math.Abs(rates[i] - rate) <= reach && seen++ % every == 0)
                about.Add((rates[i], float.IsNaN(uncertainties[i]) ? noise : uncertainties[i]));
        double above = about.Sum(pixel =>
            pixel.Rate > rate ? 1
            : pixel.Rate < rate ? 0
            : 0.5
        );
        double low = rate - reach,
            high = rate + reach;
        for (int halving = 0; halving < Halvings; halving++)
        {
            double middle = (low + high) / 2;
            if (about.Sum(pixel => Normal.CDF(0, 1, (pixel.Rate - middle) / pixel.Noise)) > above)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2 - rate;
    }

    private static long CountWithin(float[] rates, double rate, double reach)
    {
        long count = 0;
        foreach (float each in rates)
            if (Math.Abs(each - rate) <= reach)
                count++;
        return count;
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
