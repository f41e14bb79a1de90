using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>Calibrates half of the user's flats with the other half: what remains is what flats cannot remove.</summary>
internal static class FlatResidualRecipe
{
    private const int MinPairs = 2;

    // brighter flats are not linear any more
    private const double MostOfSaturation = 0.9;

    /// <summary>
    /// Residual from pixel to pixel and over areas, %; null where no level has four flats, with a finding.
    /// </summary>
    public static (Measurement? Pixels, Measurement? Areas) Measure(
        IReadOnlyList<FlatChannel> channels,
        IReadOnlyList<MeasuredPair> pairs,
        IReadOnlyList<ScreenedSet> sets,
        double pedestal,
        ModeFrames mode,
        StageProgress stages,
        FindingsLog log
    )
    {
        MeasuredPair[]? best = sets.Select(s => OneLevel(s, pairs, channels, pedestal))
            .Where(level => level.Length >= MinPairs)
            .MaxBy(level => level.Length * level.Average(p => Signal(p, pedestal)));
        FlatResidual?[] measured = best is null ? [] : Measure(best, channels, mode, stages);
        if (measured.Length == 0 || measured.Any(r => r is null))
        {
            log.Add(
                FindingCodes.FlatResidualNotMeasured,
                Severity.Note,
                "The flat-field residual was not measured: it needs 4 or more flats of one exposure under the same "
                    + "light, half of which calibrate the other half."
            );
            return (null, null);
        }
        return (
            ChannelRms.Combine([.. measured.Select(r => r!.Pixels)]),
            ChannelRms.Combine([.. measured.Select(r => r!.Areas)])
        );
    }

    /// <summary>The pairs of a set with the same light as its first pair.</summary>
    private static MeasuredPair[] OneLevel(
        ScreenedSet set,
        IReadOnlyList<MeasuredPair> pairs,
        IReadOnlyList<FlatChannel> channels,
        double pedestal
    )
    {
        MeasuredPair[] inSet = [.. pairs.Where(p => set.Frames.Contains(p.A) && IsLinear(p, channels))];
        return
        [
            .. inSet.Where(p => Math.Abs(Signal(p, pedestal) / Signal(inSet[0], pedestal) - 1) <= FlatPairing.MaxDrift),
        ];
    }

    private static bool IsLinear(MeasuredPair pair, IReadOnlyList<FlatChannel> channels) =>
        channels
            .Zip(pair.Channels)
            .All(c =>
                c.First.Saturation is not { } full
                || (c.Second.MeanA + c.Second.MeanB) / 2 < MostOfSaturation * full.SignalAdu
            );

    private static double Signal(MeasuredPair pair, double pedestal) =>
        (pair.A.Channels.Average(c => c.Mean) + pair.B.Channels.Average(c => c.Mean)) / 2 - pedestal;

    private static FlatResidual?[] Measure(
        MeasuredPair[] pairs,
        IReadOnlyList<FlatChannel> channels,
        ModeFrames mode,
        StageProgress stages
    )
    {
        int half = pairs.Length / 2;
        // in order of time, so that drift over the session shows between the halves
        MeasuredPair[] first = pairs[..half],
            second = pairs[^half..];
        stages.Report("Flats against flats", 0, 4 * half, 0);
        float[] a = MeanOf(first, stages),
            b = MeanOf(second, stages);
        stages.Report("Flats against flats", 4 * half, 4 * half, 4 * half * mode.BytesPerFrame);
        int width = pairs[0].A.Frame.Width;
        return
        [
            .. channels.Select(
                (channel, c) =>
                    FlatResidual.Measure(
                        a,
                        b,
                        width,
                        mode.Mosaic,
                        c,
                        channel.Pedestal,
                        (NoiseOf(first, c), NoiseOf(second, c)),
                        half
                    )
            ),
        ];
    }

    private static float[] MeanOf(MeasuredPair[] pairs, StageProgress stages) =>
        PixelMoments.MeanOf([.. pairs.SelectMany(p => new[] { p.A.Samples, p.B.Samples })], stages.Walk);

    /// <summary>Temporal variance in the mean of the frames of some pairs, ADU².</summary>
    private static double NoiseOf(MeasuredPair[] pairs, int channel) =>
        pairs.Average(p => p.Channels[channel].TemporalVariance.Value) / (2 * pairs.Length);
}
