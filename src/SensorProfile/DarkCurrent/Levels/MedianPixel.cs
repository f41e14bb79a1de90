using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>The median of a distribution of dark rates, free of noise and as seen in a noisy frame.</summary>
/// <remarks>
/// Noise makes a skewed distribution more even and draws its median towards its mean: glow in a corner, hot pixels and
/// a long tail of warm ones make the median of a frame too high
/// by several per cent where the noise is greater than the spread of the pixels. The distribution function is that of a
/// mixture,
/// F(x) = Σ over levels of [Φ(z) − κ₃/(6s³)·(z² − 1)·φ(z)], z = (x − level)/s, with the pixels far off added one by one
/// (Edgeworth expansion to the third cumulant;
/// Abramowitz and Stegun 1964, 26.2.47). In a frame of t seconds s² = σ² + v/t² + level/t and κ₃ = core's + 3·σ²/t +
/// rate/t²: Poisson noise is skewed, and larger in brighter pixels.
/// </remarks>
internal sealed class MedianPixel
{
    private const double Reach = 6; // standard deviations
    private const int Halvings = 50;
    private const double BinsPerSpread = 20; // the sum over levels closer than this is their mean's to 1e-4
    private readonly DarkDistribution distribution;
    private readonly double variance,
        third;

    /// <param name="distribution">Distribution of one channel at one temperature.</param>
    /// <param name="shape">Shape that its core shares with other temperatures.</param>
    public MedianPixel(DarkDistribution distribution, DarkRateShape shape)
    {
        double rate = Math.Max(0, distribution.Centre);
        (this.distribution, variance, third) = (
            distribution,
            shape.RelativeVariance * rate * rate,
            shape.RelativeThirdMoment * Math.Pow(rate, 3)
        );
        Rate = Median(level => variance, third);
    }

    /// <summary>Median of the rates themselves, e-/px/s.</summary>
    public double Rate { get; }

    /// <summary>Median of a frame above the pedestal minus the signal of the median pixel, e-.</summary>
    /// <param name="seconds">Exposure, s, greater than 0.</param>
    /// <param name="unlitVariance">Variance over the pixels of a frame at zero exposure, e-².</param>
    public double Shift(double seconds, double unlitVariance)
    {
        double skew = third + 3 * variance / seconds + Math.Max(0, Rate) / (seconds * seconds);
        return seconds
            * (
                Median(level => variance + unlitVariance / (seconds * seconds) + Math.Max(0, level) / seconds, skew)
                - Rate
            );
    }

    private double Median(Func<double, double> varianceAt, double skew)
    {
        double centre = distribution.Centre,
            widest = Math.Sqrt(varianceAt(centre)) + 1e-4 * Math.Abs(centre) + 1e-12;
        (double Level, double Spread, int Count)[] parts =
        [
            .. Binned(widest / BinsPerSpread)
                .Select(b => (b.Level, Math.Max(Math.Sqrt(varianceAt(b.Level)), 1e-3 * widest), b.Count)),
        ];
        double low = distribution.Levels[0] - Reach * widest,
            high = distribution.Levels[^1] + Reach * widest;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            if (Share(middle, parts, widest, skew) < 0.5)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Levels that lie within a width of each other, by their mean and number.</summary>
    private IEnumerable<(double Level, int Count)> Binned(double width)
    {
        double[] levels = distribution.Levels;
        for (int from = 0, to; from < levels.Length; from = to)
        {
            double sum = 0;
            for (to = from; to < levels.Length && levels[to] - levels[from] <= width; to++)
                sum += levels[to];
            yield return (sum / (to - from), to - from);
        }
    }

    /// <summary>Share of the pixels at or below a rate.</summary>
    private double Share(double rate, (double Level, double Spread, int Count)[] parts, double spread, double skew)
    {
        double core = 0,
            far = FarBelow(rate, spread);
        foreach ((double level, double own, int count) in parts)
        {
            double z = (rate - level) / own;
            core +=
                count
                * (
                    Math.Abs(z) > Reach
                        ? (z > 0 ? 1 : 0)
                        : 1
                            - Probability.NormalTail(z)
                            - skew / (6 * own * own * own) * (z * z - 1) * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI)
                );
        }
        return (core / distribution.Levels.Length * (distribution.Pixels - distribution.Far.Length) + far)
            / distribution.Pixels;
    }

    private double FarBelow(double rate, double spread)
    {
        double[] far = distribution.Far;
        double offset = rate - distribution.Centre;
        int whole = PlaceOf(far, offset - Reach * spread),
            end = PlaceOf(far, offset + Reach * spread);
        double sum = whole;
        for (int i = whole; i < end; i++)
            sum += 1 - Probability.NormalTail((offset - far[i]) / spread);
        return sum;
    }

    private static int PlaceOf(double[] sorted, double value)
    {
        int place = Array.BinarySearch(sorted, value);
        return place < 0 ? ~place : place;
    }
}
