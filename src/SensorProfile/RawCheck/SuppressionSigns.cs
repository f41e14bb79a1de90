using SensorProfile.DarkCurrent.Results;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.RawCheck;

/// <summary>
/// Signs that the camera replaces pixels beyond a limit: bright pixels become fewer in longer or warmer darks, or their
/// excess over their neighbours ends at a fixed value.
/// </summary>
/// <remarks>
/// Single frames are judged, because a camera acts on single frames. The end is looked for in all sets together, in the
/// sets from each exposure upwards, in those of each temperature and in the less noisy ones, because a camera may act
/// on long exposures only. Colours that the camera scaled after the converter are left out, because codes that never
/// occur look like an end; if no colour is left, the end is not looked for.
/// </remarks>
internal static class SuppressionSigns
{
    private const double FallSigmas = 5;
    private const double FallShare = 0.7;

    // times the read noise: a pixel with this excess is bright
    private const double FirstSigmas = 6;
    private const double ThresholdRatio = 1.4142135623730951; // √2
    private const double SameCelsius = 0.5;
    private const double MinSigmas = 3; // minimum excess of the pixels counted

    // times the read noise: the kinds of surroundings disagree about pixels closer to the level
    private const double FirstEdge = 3.7;

    // a set noisier than this times the read noise is counted from a higher excess
    private const double NoisierThanRead = 1.3;
    private const double OpenShare = 0.8; // of the way to saturation
    private const long PixelsWanted = 60_000_000; // over all frames examined together, at most FramesPerSet of each set
    private const int FramesPerSet = 16;

    // a camera without a cooler cools by a few degrees in an hour: doubling the exposure more than makes up for that
    private static TimeSpan Soon { get; } = TimeSpan.FromHours(1);

    /// <summary>Looks for signs in the darks; empty when there are none.</summary>
    public static IReadOnlyList<SuppressionSign> Find(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DarkResult darks,
        StageProgress stages
    )
    {
        ScreenedSet[] sets = [.. mode.SetsOf(FrameKind.Dark).Where(s => s.Set.ExposureSeconds > 0)];
        if (sets.Length == 0 || Noise(mode, bias, darks) is not { } noise)
            return [];
        double full = flats.Channels.Select(c => c.SaturationLevel?.Value).Min()
            ?? mode.Frames.Max(f => f.Channels.Max(c => c.Maximum));
        int step = mode.CodeStep.Step,
            perSet = (int)Math.Clamp(PixelsWanted / (mode.BytesPerFrame / 2 * sets.Length), 1, FramesPerSet);
        bool[] plain = [.. mode.FlatCodes.Select(c => !CodePopulation.Count(c, mode.CodeStep).LooksScaled)];
        bool anyPlain = plain.Contains(true);
        PairCounts[] counted = [.. sets.Select(Counts)];
        return
        [
            .. new[]
            {
                Falls(counted, noise, step),
                anyPlain ? Edge(counted, noise, step) : null,
            }.OfType<SuppressionSign>(),
        ];

        PairCounts Counts(ScreenedSet set)
        {
            var counts = new ExcessCounts();
            // Pixels that normal noise alone brings this far up say nothing.
            double own = Math.Max(
                    noise,
                    Math.Sqrt(set.Frames[0].Channels.Min(c => c.ClippedVariance)) / NoisierThanRead
                ),
                least = MinSigmas * own;
            foreach (ScreenedFrame frame in set.Frames.Take(perSet))
                counts.Add(frame.Samples, mode.Mosaic, least, step, stages.Walk, anyPlain ? plain : null);
            // Saturated pixels all end at one level, so the search stops below it.
            return new(
                set,
                counts,
                own / noise,
                (int)(OpenShare * (full - set.Frames.Max(f => f.Channels.Max(c => c.Median))) / step)
            );
        }
    }

    /// <summary>
    /// Fewer bright pixels in longer or warmer darks, which should have more; null when there is no such drop.
    /// </summary>
    private static SuppressionSign? Falls(PairCounts[] sets, double noise, int step)
    {
        for (
            double threshold = FirstSigmas * noise / step;
            threshold < ExcessCounts.Bins - 1;
            threshold *= ThresholdRatio
        )
        {
            int bin = (int)Math.Ceiling(threshold);
            double[] bright = [.. sets.Select(s => s.Counts.PerFrameFrom(bin))];
            for (int later = 0; later < sets.Length; later++)
            for (int earlier = 0; earlier < sets.Length; earlier++)
                if (
                    sets[later].CollectsMoreThan(sets[earlier])
                    && bin < sets[later].EndBin
                    && threshold >= MinSigmas * noise / step * Math.Max(sets[later].Noisier, sets[earlier].Noisier)
                    && bright[later] < FallShare * bright[earlier]
                    && bright[earlier] - bright[later] > FallSigmas * Math.Sqrt(bright[earlier] + bright[later])
                )
                    return new(
                        Invariant($"pixels at least {bin * step} ADU above their surroundings fall from ")
                            + Invariant($"{bright[earlier]:0} {sets[earlier].Conditions(sets[later])} to ")
                            + Invariant($"{bright[later]:0} {sets[later].Conditions(sets[earlier])}"),
                        bin * step
                    );
        }
        return null;
    }

    private static SuppressionSign? Edge(PairCounts[] sets, double noise, int step)
    {
        TruncatedTail? best = null;
        PairCounts[] shown = [];
        foreach (PairCounts[] group in Groups(sets))
        {
            var sum = new ExcessCounts();
            foreach (PairCounts set in group)
                sum.Add(set.Counts);
            if (
                TruncatedTail.Find(
                    sum,
                    noise / step,
                    FirstEdge * noise / step * group.Max(s => s.Noisier),
                    group.Min(s => s.EndBin)
                )
                    is { } edge
                && edge.Chance < (best?.Chance ?? 1)
            )
                (best, shown) = (edge, group);
        }
        return best is null ? null : new(Said(best, [.. shown.Select(s => s.Set)], step), best.At * step);
    }

    /// <summary>
    /// Lowest temporal noise of any channel and any set of darks, ADU, without rounding noise; null when unknown.
    /// </summary>
    private static double? Noise(ModeFrames mode, BiasResult bias, DarkResult darks)
    {
        double[] variances =
        [
            .. bias.Channels.Select(c => c.Variance?.Value).OfType<double>(),
            .. darks.Temperatures.SelectMany(t => t.Levels).Select(l => l.Variance).OfType<double>(),
        ];
        double least = variances.Length == 0 ? 0 : variances.Min() - mode.CodeStep.Step * mode.CodeStep.Step / 12.0;
        return least > 0 ? Math.Sqrt(least) : null;
    }

    private static IEnumerable<PairCounts[]> Groups(PairCounts[] sets)
    {
        foreach (double? exposure in sets.Select(s => s.Exposure).Distinct().Order())
            yield return [.. sets.Where(s => s.Exposure >= exposure)];
        if (sets.Select(s => s.Temperature).Distinct().Count() > 1)
            foreach (IGrouping<double?, PairCounts> temperature in sets.GroupBy(s => s.Temperature))
                yield return [.. temperature];
        foreach (double noisiest in new[] { 1, 1.25, 1.6, 2.2 })
            if (sets.Where(s => s.Noisier <= noisiest).ToArray() is { Length: > 0 } quiet && quiet.Length < sets.Length)
                yield return quiet;
    }

    private static string Said(TruncatedTail edge, ScreenedSet[] sets, int step)
    {
        double shortest = sets.Min(s => s.Set.ExposureSeconds!.Value),
            longest = sets.Max(s => s.Set.ExposureSeconds!.Value);
        string darks =
            shortest == longest
                ? Invariant($"{shortest:0.###} s")
                : Invariant($"{shortest:0.###} to {longest:0.###} s");
        string level = edge.Surroundings switch
        {
            Surroundings.LargestOfFour or Surroundings.LargestOfEight or Surroundings.LargestOfMany => "the brightest",
            Surroundings.MeanOfFour or Surroundings.MeanOfEight or Surroundings.MeanOfMany => "the mean",
            _ => "the median",
        };
        return Invariant($"in darks of {darks}, {edge.Before} pixels lie {edge.From * step} to {edge.At * step} ")
            + Invariant($"ADU above {level} of their neighbours, but only {edge.Beyond} lie {edge.At * step} to ")
            + Invariant($"{edge.To * step} ADU above it, where noise alone leaves at least {edge.Expected:0}");
    }

    /// <summary>
    /// A set, its counts, its noise relative to a bias frame (1 when hardly noisier), and the excess bin from which
    /// pixels may be saturated.
    /// </summary>
    private sealed record PairCounts(ScreenedSet Set, ExcessCounts Counts, double Noisier, int EndBin)
    {
        public double? Exposure => Set.Set.ExposureSeconds;

        public double? Temperature => Set.Set.TemperatureCelsius;

        public bool CollectsMoreThan(PairCounts other) =>
            Temperature is null || other.Temperature is null
                ? Temperature is null
                    && other.Temperature is null
                    && Exposure > other.Exposure
                    && IsSoonAfterOrBefore(other)
                : Exposure >= other.Exposure
                    && Temperature > other.Temperature - SameCelsius
                    && (Exposure > other.Exposure || Temperature > other.Temperature + SameCelsius);

        /// <summary>
        /// Without a thermometer, only sets taken close together in time can be assumed to be equally warm.
        /// </summary>
        private bool IsSoonAfterOrBefore(PairCounts other) =>
            Set.Set.Frames.Min(f => f.StartUtc) is { } start
            && Set.Set.Frames.Max(f => f.StartUtc) is { } end
            && other.Set.Set.Frames.Min(f => f.StartUtc) is { } otherStart
            && other.Set.Set.Frames.Max(f => f.StartUtc) is { } otherEnd
            && start - otherEnd < Soon
            && otherStart - end < Soon;

        public string Conditions(PairCounts other) =>
            Temperature is { } own && other.Temperature is { } its && Math.Abs(own - its) > SameCelsius
                ? Invariant($"at {Exposure:0.###} s and {QuantityText.ShortTenths(own)} °C")
                : Invariant($"at {Exposure:0.###} s");
    }
}
