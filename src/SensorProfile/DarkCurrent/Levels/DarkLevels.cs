using SensorProfile.Fitting.Statistics;
using SensorProfile.PhotonTransfer;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>Levels and variances of the darks of one temperature, as points for the lines against exposure.</summary>
/// <remarks>
/// Levels are converted to electrons channel by channel and then averaged, so colours with different gains can be
/// pooled.
/// </remarks>
internal sealed class DarkLevels(
    IReadOnlyList<ScreenedSet> sets,
    IReadOnlyList<Measurement> gains,
    Func<ScreenedSet, double> exposureOf
)
{
    // ADU²: noise of rounding to whole codes; a saturated frame shows no other
    private const double MinVariance = 1.0 / 12;

    /// <summary>The same for a subset of the sets.</summary>
    public DarkLevels Only(IReadOnlyList<ScreenedSet> some) => new(some, gains, exposureOf);

    /// <summary>
    /// One point per frame: exposure in s, level in e- and its statistical uncertainty, over all channels or over one.
    /// </summary>
    public IReadOnlyList<(double ExposureSeconds, double Level, double Uncertainty)> Points(
        Func<ChannelReading, double> level,
        double efficiency,
        int? channel = null
    ) =>
        [
            .. sets.SelectMany(set =>
                set.Frames.Select(f =>
                    (
                        exposureOf(set),
                        Selected(channel).Average(c => level(f.Channels[c]) * gains[c].Value),
                        Math.Sqrt(
                            Selected(channel)
                                .Sum(c => Square(gains[c].Value) * Doubt(f.Channels[c], efficiency, set.Frames.Count))
                        ) / Selected(channel).Count()
                    )
                )
            ),
        ];

    // All frames of a set are rounded alike, so the rounding error does not average out over them.
    private static double Doubt(ChannelReading reading, double efficiency, int frames) =>
        Square(efficiency) * Math.Max(reading.ClippedVariance, MinVariance) / reading.Pixels
        + Square(reading.RoundingDoubt) * frames;

    /// <summary>
    /// Points of the median pixel: the medians of the frames, corrected for the shift that noise causes.
    /// </summary>
    public IReadOnlyList<(double ExposureSeconds, double Level, double Uncertainty)> MedianPoints(
        MedianShift shift,
        int? channel = null
    )
    {
        double[] shifts =
        [
            .. sets.SelectMany(set => set.Frames.Select(_ => Selected(channel).Average(c => shift.Of(set, c)))),
        ];
        return
        [
            .. Points(c => c.Median, OrderStatistics.MedianToMeanError, channel)
                .Select((p, i) => p with { Level = p.Level - shifts[i] }),
        ];
    }

    /// <summary>
    /// One point per pair: exposure in s, temporal variance in e-² and its uncertainty. Bias pairs join at zero
    /// exposure, because read noise does not depend on temperature.
    /// </summary>
    public static IReadOnlyList<(double ExposureSeconds, double Level, double Uncertainty)> Variances(
        IReadOnlyList<(double ExposureSeconds, PairStatistics Pair)> pairs,
        IReadOnlyList<PooledVariance?> bias,
        IReadOnlyList<Measurement> gains,
        int? channel = null
    )
    {
        int[] channels = channel is { } one ? [one] : [.. Enumerable.Range(0, gains.Count)];
        List<(double, double, double)> points =
        [
            .. pairs.Select(p =>
                (
                    p.ExposureSeconds,
                    channels.Average(c => p.Pair.Channels[c].TemporalVariance.Value * Square(gains[c].Value)),
                    Math.Sqrt(
                        channels.Sum(c =>
                            Square(p.Pair.Channels[c].TemporalVariance.StandardUncertainty * Square(gains[c].Value))
                        )
                    ) / channels.Length
                )
            ),
        ];
        if (bias.Count > 0 && channels.All(c => bias[c] is not null))
            points.Add(
                (
                    0,
                    channels.Average(c => bias[c]!.Value * Square(gains[c].Value)),
                    Math.Sqrt(channels.Sum(c => Square(bias[c]!.StandardUncertainty * Square(gains[c].Value))))
                        / channels.Length
                )
            );
        return points;
    }

    /// <summary>Levels above the pedestal for plots, one per exposure, ADU, averaged over the channels.</summary>
    public static IReadOnlyList<DarkLevel> ForPlots(
        IReadOnlyList<ScreenedSet> sets,
        double medianPedestal,
        double meanPedestal,
        Func<ScreenedSet, double> shift,
        IReadOnlyList<(double ExposureSeconds, PairStatistics Pair)> pairs
    )
    {
        return
        [
            .. sets.GroupBy(s => s.Set.ExposureSeconds ?? 0)
                .OrderBy(g => g.Key)
                .Select(group =>
                {
                    ScreenedFrame[] frames = [.. group.SelectMany(s => s.Frames)];
                    double[] medians = [.. group.SelectMany(s => s.Frames.Select(f => f.Level - shift(s)))],
                        means = [.. frames.Select(f => f.Channels.Average(c => c.Mean))];
                    PooledVariance? variance = PooledVariance.Pool([
                        .. pairs
                            .Where(p => p.ExposureSeconds == group.Key)
                            .SelectMany(p => p.Pair.Channels)
                            .Select(c => c.TemporalVariance)
                            .Select(v => (v.Value, v.StandardUncertainty)),
                    ]);
                    return new DarkLevel
                    {
                        Exposure = group.Key,
                        Frames = frames.Length,
                        Median = medians.Average() - medianPedestal,
                        MedianUncertainty = StandardError(medians, frames[0]),
                        Mean = means.Average() - meanPedestal,
                        MeanUncertainty = StandardError(means, frames[0]),
                        Variance = variance?.Value,
                        VarianceUncertainty = variance?.StandardUncertainty,
                    };
                }),
        ];
    }

    private static double StandardError(double[] levels, ScreenedFrame frame)
    {
        double noise = Math.Sqrt(frame.Channels.Average(c => c.ClippedVariance) / frame.Channels.Sum(c => c.Pixels));
        if (levels.Length < 2)
            return noise;
        double mean = levels.Average(),
            scatter = Math.Sqrt(levels.Sum(l => Square(l - mean)) / (levels.Length - 1));
        return Math.Max(noise, scatter) / Math.Sqrt(levels.Length) * Probability.CoverageWidening(levels.Length - 1);
    }

    /// <summary>
    /// Standard uncertainty of the median level of a frame against other frames of the same pixels, averaged over its
    /// channels, from pixel noise and rounding, ADU.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="temporal">Variance of a pixel in time, ADU²; null where unknown: then all of it counts.</param>
    public static double MedianNoise(ScreenedFrame frame, double? temporal)
    {
        double Variance(ChannelReading c)
        {
            double spread = Math.Max(Square(c.CoreSpread), MinVariance);
            double moving = temporal is { } known ? MovingVariance(1 - (known / spread)) : 1;
            return (Square(OrderStatistics.MedianToMeanError) * spread * moving / c.Pixels) + Square(c.RoundingDoubt);
        }
        return Math.Sqrt(frame.Channels.Sum(Variance)) / frame.Channels.Count;
    }

    /// <summary>
    /// Variance of the median of pixels in time over that of as many numbers drawn afresh, where a share of the variance over
    /// the pixels is fixed pattern, the same in every frame.
    /// </summary>
    /// <remarks>
    /// A median moves by the pixels that noise carries across it, in variance the mean of F(1 − F) for a pixel that lies below
    /// with probability F, over the squared density of pixels there. Of normal pattern and normal noise that mean is
    /// ¼·(1 − (2/π)·arcsin ρ), ρ the fixed share.
    /// </remarks>
    internal static double MovingVariance(double fixedShare) =>
        1 - (2 / Math.PI * Math.Asin(Math.Clamp(fixedShare, 0, 1)));

    private IEnumerable<int> Selected(int? channel) => channel is { } one ? [one] : Enumerable.Range(0, gains.Count);

    private static double Square(double x) => x * x;
}
