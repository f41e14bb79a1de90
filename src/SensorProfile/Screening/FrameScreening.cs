using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using static System.FormattableString;

namespace SensorProfile.Screening;

/// <summary>Reads every frame of a mode once and removes those that must not be pooled with the rest.</summary>
internal static class FrameScreening
{
    private const int FramesForCodeStep = 6;
    private const double OutlierSigmas = 8;
    private const double AveragedShare = 0.7;

    /// <param name="frames">Readable frames of one mode, ordered by time.</param>
    /// <param name="samples">Their pixels, in the same order.</param>
    /// <param name="sets">The sets of this mode.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="stages">Threads and progress.</param>
    /// <param name="log">Receives the rejected frames.</param>
    public static ModeFrames Screen(
        IReadOnlyList<Frame> frames,
        IReadOnlyList<IFrameSamples> samples,
        IReadOnlyList<FrameSet> sets,
        ColourMosaic mosaic,
        StageProgress stages,
        FindingsLog log
    )
    {
        CodeStep step = FindCodeStep(samples, mosaic, stages);
        var flatCodes = new FlatCodes(mosaic.Channels);
        long bytes = 2L * frames[0].Width * frames[0].Height;
        string?[] damage = new string?[frames.Count];
        ScreenedFrame?[] looked = stages.ForEach(
            "Looking at every frame",
            [.. Enumerable.Range(0, frames.Count)],
            1,
            bytes,
            i =>
            {
                // now, because the screening that follows then finds the file in memory
                damage[i] = samples[i].Damage();
                if (damage[i] is not null)
                    return null;
                FrameStatistics statistics = FrameStatistics.Measure(samples[i], mosaic, stages.SingleThread);
                if (frames[i].Kind == FrameKind.Flat)
                    flatCodes.Add(statistics);
                return new ScreenedFrame(
                    frames[i],
                    samples[i],
                    [.. statistics.Channels.Select(c => ChannelReading.Measure(c, step.Step))],
                    statistics.RowMeans(),
                    statistics.Channels.Aggregate((Int128)0, (sum, c) => sum + c.Codes.Sum)
                );
            }
        );
        log.LeaveOut(
            FindingCodes.DamagedFrame,
            "Frames whose pixels do not add up to the sum stored in their header were left out: they were damaged "
                + "or changed after they were written; copy them again from where they were taken.",
            frames
                .Zip(damage)
                .Where(f => f.Second is not null)
                .Select(f => (f.First, $"Damaged or changed: {f.Second}"))
        );
        double? biasVariance = BiasVariance(looked.OfType<ScreenedFrame>());
        var byName = looked.OfType<ScreenedFrame>().ToDictionary(s => s.Name, StringComparer.Ordinal);
        return new ModeFrames
        {
            Settings = frames[0].Settings,
            Mosaic = mosaic,
            CodeStep = step,
            FlatCodes = flatCodes.Histograms(),
            Sets =
            [
                .. SilentNights
                    .Split(StuckProbe.Check(sets, byName, step.Step, log), byName, log)
                    .Select(set =>
                        Sift(
                            set,
                            [
                                .. set
                                    .Frames.Where(f => byName.ContainsKey(f.Name))
                                    .Select(f => byName[f.Name] with { Frame = f }),
                            ],
                            step.Step,
                            biasVariance,
                            log
                        )
                    ),
            ],
        };
    }

    // takes frames from the whole session, since bias and flats are rarely taken together
    private static CodeStep FindCodeStep(
        IReadOnlyList<IFrameSamples> samples,
        ColourMosaic mosaic,
        StageProgress stages
    )
    {
        int every = Math.Max(1, samples.Count / FramesForCodeStep);
        return CodeStep.Find(
            IntegerHistogram.Merge(
                samples
                    .Where((_, i) => i % every == 0)
                    .Select(s => FrameStatistics.Measure(s, mosaic, stages.Walk).AllCodes())
            )
        );
    }

    private static ScreenedSet Sift(
        FrameSet set,
        IReadOnlyList<ScreenedFrame> frames,
        int codeStep,
        double? biasVariance,
        FindingsLog log
    )
    {
        if (set.Kind is FrameKind.Flat or FrameKind.Light or FrameKind.Unknown)
            return new(set, frames);
        frames = WithoutTorn(frames, codeStep, log);
        frames = WithoutLevelOutliers(set, frames, codeStep, log);
        // with unknown temperatures, colder darks have less noise than others, but none has less than a bias frame
        double? usual = set is { Kind: FrameKind.Dark, TemperatureCelsius: null }
            ? biasVariance
            : MedianVariance(frames);
        return new(set, usual is { } variance ? WithoutAveraged(frames, variance, log) : frames);
    }

    // An interrupted read-out leaves the level of another exposure. A step smaller than a code is not one, and does no
    // harm.
    private static ScreenedFrame[] WithoutTorn(IReadOnlyList<ScreenedFrame> frames, int codeStep, FindingsLog log)
    {
        TornFrame?[] torn =
        [
            .. TornFrame
                .FindAll([.. frames.Select(f => f.RowMeans)])
                .Select(t => t is not null && Math.Abs(t.Step) >= codeStep ? t : null),
        ];
        log.LeaveOut(
            FindingCodes.TornFrame,
            "Frames whose rows from some row on belong to another exposure were left out: the read-out was "
                + "interrupted; take them again.",
            frames
                .Zip(torn)
                .Where(f => f.Second is not null)
                .Select(f =>
                    (
                        f.First.Frame,
                        Invariant(
                            $"Torn: from row {f.Second!.FirstRow + 1} on, its level differs by {f.Second.Step:0.#} ADU from the rows above."
                        )
                    )
                )
        );
        return [.. frames.Where((_, i) => torn[i] is null)];
    }

    private static ScreenedFrame[] WithoutLevelOutliers(
        FrameSet set,
        IReadOnlyList<ScreenedFrame> frames,
        int codeStep,
        FindingsLog log
    )
    {
        if (frames.Count < 3)
            return [.. frames];
        double median = OrderStatistics.Median([.. frames.Select(f => f.Level)]);
        double scatter = OrderStatistics.MadSigma([.. frames.Select(f => f.Level)]);
        double noise = Math.Sqrt(
            OrderStatistics.Median([.. frames.Select(f => f.Channels.Average(c => c.ClippedVariance))])
        );
        double limit = Math.Max(OutlierSigmas * scatter, Math.Max(5 * codeStep, 2 * noise));
        bool IsOutlier(ScreenedFrame f) => Math.Abs(f.Level - median) > limit;
        string kind = set.Kind == FrameKind.Bias ? "bias" : "dark";
        log.LeaveOut(
            FindingCodes.LevelOutlier,
            $"Frames whose level is far from the rest of their {kind} set were left out: a light leak, another "
                + "exposure or another setting.",
            frames
                .Where(IsOutlier)
                .Select(f =>
                    (
                        f.Frame,
                        Invariant($"Its level of {f.Level:0.#} ADU is far from the {median:0.#} ADU of ")
                            + Invariant($"the other {frames.Count - 1} frames of its set.")
                    )
                )
        );
        return [.. frames.Where(f => !IsOutlier(f))];
    }

    private static double? BiasVariance(IEnumerable<ScreenedFrame> frames) =>
        MedianVariance([.. frames.Where(f => f.Frame.Kind == FrameKind.Bias)]);

    private static double? MedianVariance(IReadOnlyList<ScreenedFrame> frames) =>
        frames.Count < 4 ? null : OrderStatistics.Median([.. frames.Select(Variance)]);

    private static double Variance(ScreenedFrame frame) => frame.Channels.Average(c => c.ClippedVariance);

    private static ScreenedFrame[] WithoutAveraged(IReadOnlyList<ScreenedFrame> frames, double usual, FindingsLog log)
    {
        bool IsAveraged(ScreenedFrame f) => Variance(f) < AveragedShare * usual;
        log.LeaveOut(
            FindingCodes.AveragedFrame,
            "Frames with far less noise than the rest of their set were left out: they look averaged or smoothed, "
                + "and only raw frames show the noise.",
            frames
                .Where(IsAveraged)
                .Select(f =>
                    (
                        f.Frame,
                        Invariant($"Its pixels scatter by {Math.Sqrt(Variance(f)):0.##} ADU where its set ")
                            + Invariant($"scatters by {Math.Sqrt(usual):0.##} ADU: averaged or smoothed.")
                    )
                )
        );
        return [.. frames.Where(f => !IsAveraged(f))];
    }
}
