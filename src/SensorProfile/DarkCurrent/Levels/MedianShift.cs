using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// How far the median of a dark frame lies above the signal of the median pixel, because noise makes a skewed
/// distribution more symmetric (<see cref="MedianPixel"/>).
/// </summary>
internal sealed class MedianShift
{
    /// <summary>
    /// Relative uncertainty of the shift: the shape of the core is known only up to its third moment, and pooled over
    /// temperatures. Simulated cameras with glow, hot pixels and a floor differ by up to this much
    /// (<c>MedianPixelTests</c>, <c>KnownTruthTests</c>).
    /// </summary>
    public const double RelativeDoubt = 0.15;

    private readonly Dictionary<ScreenedSet, (double[] Shifts, MedianPixel[] Pixels)> channels = new(
        ReferenceEqualityComparer.Instance
    );

    /// <summary>
    /// No correction: without bias frames, or with frames too small or too few to measure the distribution.
    /// </summary>
    public static MedianShift None { get; } = new();

    /// <summary>Whether there is a correction.</summary>
    public bool IsKnown => channels.Count > 0;

    /// <summary>Shift of a frame of this set, e-.</summary>
    public double Of(ScreenedSet set, int channel) => channels.TryGetValue(set, out var own) ? own.Shifts[channel] : 0;

    /// <summary>Mean over the channels, e-; null where the distribution is not known.</summary>
    public double? Of(ScreenedSet set) => channels.TryGetValue(set, out var own) ? own.Shifts.Average() : null;

    /// <summary>
    /// Shift of a rate, e-/px/s, at the temperature of these sets, as a function of channel, exposure in s and variance
    /// of a pixel without signal in e-²; null where the distribution is not known.
    /// </summary>
    public Func<int, double, double, double>? OfRate(IEnumerable<ScreenedSet> sets) =>
        sets.Select(s => channels.GetValueOrDefault(s).Pixels).FirstOrDefault(p => p is not null) is { } own
            ? (channel, seconds, variance) => own[channel].Shift(seconds, variance) / seconds
            : null;

    /// <summary>
    /// Measures the distribution at every temperature on the longest exposure with two or more frames.
    /// </summary>
    /// <param name="temperatures">Sets of each temperature.</param>
    /// <param name="bias">The bias frames.</param>
    /// <param name="mode">The camera mode.</param>
    /// <param name="gains">e-/ADU of each channel.</param>
    /// <param name="walk">Threads.</param>
    public static MedianShift Measure(
        IReadOnlyList<ScreenedSet[]> temperatures,
        BiasResult bias,
        ModeFrames mode,
        IReadOnlyList<double> gains,
        WalkOptions walk
    )
    {
        if (bias.Moments is not { } moments || bias.Channels.Any(c => c.Variance is null))
            return None;
        double[] unlit =
        [
            .. gains.Select(
                (gain, c) =>
                    gain * gain * bias.Sets.SelectMany(s => s.Frames).Average(f => f.Channels[c].ClippedVariance)
            ),
        ];
        double[] pedestal =
        [
            .. gains.Select((gain, c) => gain * gain * bias.Channels[c].Variance!.Value / moments.Frames),
        ];
        var measured = new DarkDistribution[temperatures.Count][];
        for (int t = 0; t < temperatures.Count; t++)
        {
            ScreenedSet? longest = temperatures[t]
                .Where(s => s.Frames.Count > 1 && s.Set.ExposureSeconds > 0)
                .MaxBy(s => s.Set.ExposureSeconds);
            if (
                longest is null
                || HalvedSignals.Collect(
                    [.. longest.Frames.Select(f => f.Samples)],
                    moments.Mean,
                    mode.Mosaic,
                    gains,
                    walk
                )
                    is not { } signals
            )
                return None;
            measured[t] =
            [
                .. signals.Select(
                    (s, c) => DarkDistribution.Measure(s, longest.Set.ExposureSeconds!.Value, pedestal[c])
                ),
            ];
        }
        var shift = new MedianShift();
        for (int c = 0; c < gains.Count; c++)
        {
            DarkRateShape shape = DarkRateShape.Measure([.. measured.Select(m => m[c])]);
            for (int t = 0; t < temperatures.Count; t++)
            {
                var pixel = new MedianPixel(measured[t][c], shape);
                foreach (ScreenedSet set in temperatures[t].Where(s => s.Set.ExposureSeconds > 0))
                {
                    if (!shift.channels.TryGetValue(set, out var own))
                        shift.channels[set] = own = (new double[gains.Count], new MedianPixel[gains.Count]);
                    (own.Shifts[c], own.Pixels[c]) = (pixel.Shift(set.Set.ExposureSeconds!.Value, unlit[c]), pixel);
                }
            }
        }
        return shift;
    }
}
