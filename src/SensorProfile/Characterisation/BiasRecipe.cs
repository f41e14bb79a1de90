using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>
/// Bias frames → level, read noise, row and column noise, stability (measurements of the standard: EMVA 1288, Release
/// 4.0 Linear).
/// </summary>
internal static class BiasRecipe
{
    private const double MaxClipped = 0.02;
    private const double SuspectCorrelation = 0.02;

    public static BiasResult Measure(ModeFrames mode, StageProgress stages, FindingsLog log)
    {
        IReadOnlyList<ScreenedSet> sets = mode.SetsOf(FrameKind.Bias);
        ScreenedFrame[] frames = [.. sets.SelectMany(s => s.Frames)];
        if (frames.Length == 0)
            return new();

        (ScreenedFrame A, ScreenedFrame B)[] pairs = [.. sets.SelectMany(s => s.Pairs())];
        PairStatistics[] statistics = stages.ForEach("Bias pairs", pairs, 2, mode.BytesPerFrame, p =>
            PairStatistics.Measure(p.A.Samples, p.B.Samples, mode.Mosaic, options: stages.SingleThread)
        );
        bool clipped = ReportClipping(frames, log);
        if (pairs.Length > 0)
            ReportCorrelation(pairs[0], statistics[0], stages, log);

        BiasChannel[] channels =
        [
            .. mode.Mosaic.Names.Select((name, c) => Channel(name, c, frames, statistics, mode.CodeStep.Step, clipped)),
        ];
        Report(channels, mode.CodeStep.Step, clipped, log);
        return new BiasResult
        {
            Channels = channels,
            Sets = sets,
            Level = LevelOf(
                [.. frames.Select(f => f.Channels.Average(c => c.Mean))],
                mode.CodeStep.Step,
                frames[0].Channels.Sum(c => c.Pixels)
            ),
            ReadNoiseAdu = ChannelRms.Combine([.. channels.Select(c => c.ReadNoiseAdu)]),
            Structure = Structure(statistics),
            Stability = Stability([.. frames.Select(f => f.Channels.Average(c => c.Mean))]),
            Moments = frames.Length < 2 ? null : Moments(frames, stages, mode),
        };
    }

    private static PixelMoments Moments(ScreenedFrame[] frames, StageProgress stages, ModeFrames mode)
    {
        stages.Report("Noise of every pixel", 0, frames.Length, 0);
        PixelMoments moments = PixelMoments.Measure([.. frames.Select(f => f.Samples)], stages.Walk);
        stages.Report("Noise of every pixel", frames.Length, frames.Length, frames.Length * mode.BytesPerFrame);
        return moments;
    }

    private static BiasChannel Channel(
        string name,
        int channel,
        ScreenedFrame[] frames,
        PairStatistics[] pairs,
        int codeStep,
        bool clipped
    )
    {
        Measurement level = LevelOf(
            [.. frames.Select(f => f.Channels[channel].Mean)],
            codeStep,
            frames[0].Channels[channel].Pixels
        );
        PooledVariance? variance = PooledVariance.Pool([
            .. pairs.Select(p => p.Channels[channel].TemporalVariance).Select(v => (v.Value, v.StandardUncertainty)),
        ]);
        return new(
            name,
            level,
            variance,
            variance is null || clipped ? null : ReadNoise.Adu(variance, codeStep, frames[0].Channels[channel].Pixels)
        );
    }

    /// <summary>
    /// Mean of the frames' levels; its uncertainty comes from their scatter, widened for few frames. A single frame
    /// cannot show its scatter: half a code step is used instead.
    /// </summary>
    internal static Measurement LevelOf(double[] levels, int codeStep, long pixels)
    {
        double mean = levels.Average();
        double scatter =
            levels.Length > 1
                ? Math.Sqrt(levels.Sum(l => (l - mean) * (l - mean)) / (levels.Length - 1) / levels.Length)
                : 0;
        double uncertainty =
            levels.Length > 1 ? scatter * Probability.CoverageWidening(levels.Length - 1) : codeStep / 2.0;
        return new(mean, uncertainty, "ADU", levels.Length * pixels, "mean of the frames' mean levels");
    }

    private static Measurement? Stability(double[] levels)
    {
        if (levels.Length < 3)
            return null;
        double mean = levels.Average(),
            deviation = Math.Sqrt(levels.Sum(l => (l - mean) * (l - mean)) / (levels.Length - 1));
        return new(
            deviation,
            deviation / Math.Sqrt(2.0 * (levels.Length - 1)),
            "ADU",
            levels.Length,
            "standard deviation of the frames' mean levels"
        );
    }

    private static StructuredNoise? Structure(PairStatistics[] pairs)
    {
        if (pairs.Length == 0)
            return null;
        StructuredNoise[] all = [.. pairs.SelectMany(p => p.Channels).Select(StructuredNoise.Measure)];
        return new(Mean([.. all.Select(s => s.RowVariance)]), Mean([.. all.Select(s => s.ColumnVariance)]));

        static Measurement Mean(Measurement[] values) =>
            values[0] with
            {
                Value = values.Average(v => v.Value),
                StandardUncertainty =
                    Math.Sqrt(values.Sum(v => v.StandardUncertainty * v.StandardUncertainty)) / values.Length,
                Samples = values.Sum(v => v.Samples),
            };
    }

    private static bool ReportClipping(ScreenedFrame[] frames, FindingsLog log)
    {
        double worst = frames.Max(f => f.Channels.Max(c => c.ShareClippedBelow));
        if (worst <= MaxClipped)
            return false;
        log.Add(
            FindingCodes.BlackClipped,
            Severity.Refusal,
            Invariant(
                $"{100 * worst:0.#} % of the pixels of a bias frame are cut off at its lowest code, so read noise "
            ) + "and bias level cannot be measured: raise the camera's offset setting and take the bias frames again.",
            [.. frames.Where(f => f.Channels.Any(c => c.ShareClippedBelow > MaxClipped)).Select(f => f.Name)]
        );
        return true;
    }

    private static void ReportCorrelation(
        (ScreenedFrame A, ScreenedFrame B) pair,
        PairStatistics statistics,
        StageProgress stages,
        FindingsLog log
    )
    {
        NeighbourCorrelation[] channels =
        [
            .. NeighbourCorrelation.Measure(pair.A.Samples, pair.B.Samples, statistics, stages.Walk),
        ];
        // frames without noise have no correlation either
        Measurement? strongest = channels
            .SelectMany(c => new[] { c.AlongRow, c.AlongColumn, c.Diagonal })
            .Where(m => double.IsFinite(m.Value))
            .MaxBy(m => Math.Abs(m.Value));
        if (strongest is null || Math.Abs(strongest.Value) < SuspectCorrelation + 5 * strongest.StandardUncertainty)
            return;
        log.Add(
            FindingCodes.NeighbourCorrelation,
            Severity.Warning,
            Invariant(
                $"The noise of neighbouring pixels is correlated ({strongest.Value:0.00}): the camera smooths or "
            )
                + "compresses its frames, so read noise comes out too small and gain too large; look for a setting "
                + "that gives raw data.",
            [pair.A.Name, pair.B.Name]
        );
    }

    private static void Report(BiasChannel[] channels, int codeStep, bool clipped, FindingsLog log)
    {
        if (!clipped && channels.Any(c => c.Variance is not null && c.ReadNoiseAdu is null))
            log.Add(
                FindingCodes.QuantisationLimited,
                Severity.Refusal,
                Invariant($"Read noise is below {ReadNoise.UpperLimitAdu(codeStep):0.##} ADU, too small for the ")
                    + "converter's steps to show it (EMVA 1288): measure at a higher gain or ISO setting."
            );
        if (channels.Any(c => c.Variance is { PairsAgree: false }))
            log.Add(
                FindingCodes.BiasPairsDisagree,
                Severity.Note,
                "The noise of the bias pairs differs by more than chance: the read noise is their mean, and its "
                    + "uncertainty includes the differences."
            );
    }
}
