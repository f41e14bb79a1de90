using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>
/// Flat pairs → gain, saturation, linearity, response nonuniformity (photon-transfer method; EMVA 1288, Release 4.0
/// Linear).
/// </summary>
internal static class FlatRecipe
{
    // χ² per degree of freedom of the row ratios beyond which the light flickered row by row.
    private const double FlickerChiSquare = 2;

    // Row noise and saturated rows raise that χ² too, but move the ratios by far less than a lamp does.
    private const double FlickerScatter = 1e-3;

    // A ratio of two rows scatters by √2 times their noise over the signal; row noise in bands may be twice as large in
    // one frame as in another.
    private const double NotRowNoise = 4;

    public static FlatResult Measure(ModeFrames mode, BiasResult bias, StageProgress stages, FindingsLog log)
    {
        IReadOnlyList<ScreenedSet> sets = mode.SetsOf(FrameKind.Flat);
        if (sets.Count == 0)
            return new();
        if (DarkLevelWithoutLight.Estimate(mode, bias, stages) is not { } dark)
        {
            log.Add(
                FindingCodes.NoLevelWithoutLight,
                Severity.Refusal,
                "The flats have no level without light to be compared with, so gain, full well and linearity "
                    + "cannot be measured: take at least 2 bias frames at the same settings."
            );
            return new();
        }
        MeasuredPair[] pairs = MeasurePairs(sets, dark, bias, mode, stages, log);
        if (pairs.Length == 0)
            return new();

        int[] topCodes =
        [
            .. Enumerable
                .Range(0, mode.Mosaic.Channels)
                .Select(c => sets.SelectMany(s => s.Frames).Max(f => f.Channels[c].Maximum)),
        ];
        FlatChannel[] channels =
        [
            .. Enumerable.Range(0, mode.Mosaic.Channels).Select(c => Channel(c, pairs, dark, topCodes[c], mode)),
        ];
        (Measurement? residual, Measurement? overAreas) = FlatResidualRecipe.Measure(
            channels,
            pairs,
            sets,
            dark.Mean,
            mode,
            stages,
            log
        );
        (channels, float[] mean, double[] noise) = WithNonuniformity(channels, pairs, sets, dark, bias, mode, stages);
        FlatFindings.Report(channels, pairs, mode, log);
        channels = OnlyOfRawData(channels, mode, log);
        return new FlatResult
        {
            Channels = channels,
            Gain = ChannelAgreement.Gain([.. channels.Select(c => c.Fit)], log),
            Mean = mean,
            MeanNoise = noise,
            Residual = residual,
            ResidualOverAreas = overAreas,
        };
    }

    private static FlatChannel[] OnlyOfRawData(FlatChannel[] channels, ModeFrames mode, FindingsLog log)
    {
        if (channels.All(c => c.Fit is null))
            log.Add(
                FindingCodes.GainNotMeasurable,
                Severity.Refusal,
                "The noise of the flats does not grow with their light, so gain, full well and everything in electrons "
                    + "cannot be measured: check that these are raw flats, bright enough and not saturated."
            );
        bool scaledCodes = mode.FlatCodes.Any(c => CodePopulation.Count(c, mode.CodeStep).LooksScaled);
        if (RawResponse.EvidenceAgainst(channels, scaledCodes) is not { } evidence)
            return channels;
        log.Add(
            FindingCodes.ResponseNotRaw,
            Severity.Refusal,
            $"These flats do not respond to light as raw data do ({evidence}), so gain, read noise in electrons, full well "
                + "and dark current are not given: frames that were stretched, saved with 8 bits or otherwise processed "
                + "have no gain; take raw frames, 16 bits, without any correction in camera or capture program."
        );
        return [.. channels.Select(c => c with { Fit = null })];
    }

    private static MeasuredPair[] MeasurePairs(
        IReadOnlyList<ScreenedSet> sets,
        DarkLevelWithoutLight dark,
        BiasResult bias,
        ModeFrames mode,
        StageProgress stages,
        FindingsLog log
    )
    {
        var pairs = new List<(ScreenedFrame A, ScreenedFrame B, double[] Pedestal, double? Exposure)>();
        var apart = new List<(Frame, string)>();
        foreach (ScreenedSet set in sets)
        {
            double[] pedestal = dark.LevelsFor(set, mode);
            var (found, alone) = FlatPairing.Pair(set, pedestal.Average());
            pairs.AddRange(found.Select(p => (p.A, p.B, pedestal, set.Set.ExposureSeconds)));
            if (set.Frames.Count > 1 && alone.Count > 1)
                apart.AddRange(
                    alone.Select(f =>
                        (
                            f.Frame,
                            "Its light differs by more than 5 % from the flats taken before and after it, so it has no "
                                + "partner."
                        )
                    )
                );
        }
        log.LeaveOut(
            FindingCodes.FlatPairLeftOut,
            "Flats without a partner of the same brightness were left out: take flats in pairs, one right after "
                + "the other, under steady light.",
            apart
        );
        return WithLight(
            stages.ForEach("Flat pairs", pairs, 4, mode.BytesPerFrame, p =>
                Measure(p.A, p.B, p.Pedestal, p.Exposure, RowNoise(bias), mode, stages)
            ),
            log
        );
    }

    // A colour whose pixels are all stuck, or without light, has no signal to divide by.
    private static MeasuredPair[] WithLight(MeasuredPair[] pairs, FindingsLog log)
    {
        ILookup<bool, MeasuredPair> byState = pairs.ToLookup(p =>
            p.Channels.Select((_, c) => Point(p, c, 0)).All(point => point.IsFinite)
        );
        log.LeaveOut(
            FindingCodes.FlatPairLeftOut,
            "Flat pairs in which a colour has no light above the level without light were left out: they are too dark, "
                + "or their pixels are stuck.",
            byState[false]
                .SelectMany(p => new[] { p.A.Frame, p.B.Frame })
                .Select(f => (f, "No signal and noise can be formed from its pixels."))
        );
        return [.. byState[true]];
    }

    // Without light the rows of a frame scatter by this, ADU.
    private static double RowNoise(BiasResult bias) =>
        bias.Structure?.RowVariance.Value is > 0 and { } variance ? Math.Sqrt(variance) : 0;

    private static MeasuredPair Measure(
        ScreenedFrame a,
        ScreenedFrame b,
        double[] pedestal,
        double? exposure,
        double rowNoise,
        ModeFrames mode,
        StageProgress stages
    )
    {
        ChannelPedestals level = ChannelPedestals.Level(mode.Mosaic, pedestal);
        IReadOnlyList<ScaledPairChannel> whole = ScaledPair.Measure(
            a.Samples,
            b.Samples,
            mode.Mosaic,
            level,
            RatioKind.WholeFrame,
            options: stages.SingleThread
        );
        bool flickers = whole.Any(c =>
            c.RatioChiSquare > FlickerChiSquare
            && OrderStatistics.MadSigma(c.RowRatios) > Math.Max(FlickerScatter, NotRowNoise * rowNoise / c.MeanA)
        );
        return new(
            a,
            b,
            exposure,
            flickers
                ? ScaledPair.Measure(
                    a.Samples,
                    b.Samples,
                    mode.Mosaic,
                    level,
                    RatioKind.RowByRow,
                    options: stages.SingleThread
                )
                : whole,
            flickers
        );
    }

    private static FlatChannel Channel(
        int c,
        MeasuredPair[] pairs,
        DarkLevelWithoutLight dark,
        int topCode,
        ModeFrames mode
    )
    {
        FlatPairPoint[] points = [.. pairs.Select(p => Point(p, c, topCode))];
        double pedestal = dark.Levels[c];
        SaturationLevel? saturation = Saturation.Find(points, topCode - pedestal, mode.CodeStep.Step);
        PooledVariance? variance = dark.Variances[c];
        double end = saturation?.SignalAdu ?? points.Max(p => p.MeanSignal) / 0.95;
        FlatPairPoint[] timed = [.. points.Where(p => p.ExposureSeconds > 0)];
        return new FlatChannel
        {
            Name = mode.Mosaic.Names[c],
            Points = points,
            Pedestal = pedestal,
            DarkVariance = variance?.Value ?? 0,
            Saturation = saturation,
            Fit = variance is null
                ? null
                : GainFit.Fit(points, variance.Value, variance.StandardUncertainty, saturation?.SignalAdu),
            Linearity =
                timed.Length < points.Length
                    ? null
                    : Linearity.Fit(
                        [.. points.Select(p => p.ExposureSeconds!.Value)],
                        [.. points.Select(p => p.MeanSignal)],
                        [.. points.Select(p => Math.Sqrt(Math.Max(0, p.Variance) / p.Pixels / 2))],
                        end
                    ),
        };
    }

    private static FlatPairPoint Point(MeasuredPair pair, int c, int topCode)
    {
        ScaledPairChannel channel = pair.Channels[c];
        double top = new[] { pair.A, pair.B }.Average(f =>
            f.Channels[c].Maximum == topCode ? f.Channels[c].ShareAtMaximum : 0
        );
        bool measured = channel.Pixels > 1;
        return new FlatPairPoint
        {
            ExposureSeconds = pair.ExposureSeconds,
            Signal = measured ? channel.Signal : (channel.MeanA + channel.MeanB) / 2,
            MeanSignal = (channel.MeanA + channel.MeanB) / 2,
            Variance = measured ? channel.TemporalVariance.Value : 0,
            Pixels = Math.Max(2, channel.Pixels),
            TopCodeShare = top,
            LightRatio = channel.MeanB / channel.MeanA,
            Frames = [pair.A.Name, pair.B.Name],
        };
    }

    // EMVA 1288 takes PRNU at half saturation; without saturation the brightest flats stand in.
    private static (FlatChannel[] Channels, float[] Mean, double[] Noise) WithNonuniformity(
        FlatChannel[] channels,
        MeasuredPair[] pairs,
        IReadOnlyList<ScreenedSet> sets,
        DarkLevelWithoutLight dark,
        BiasResult bias,
        ModeFrames mode,
        StageProgress stages
    )
    {
        double wanted = channels.Average(c =>
            c.Saturation is { } s ? s.SignalAdu / 2 : c.Points.Max(p => p.MeanSignal)
        );
        MeasuredPair nearest = pairs.MinBy(p => Math.Abs(p.Channels.Average(c => c.MeanA + c.MeanB) / 2 - wanted))!;
        ScreenedFrame[] frames =
        [
            .. sets.First(s => s.Frames.Contains(nearest.A))
                .Frames.Where(f => Math.Abs(FlatPairing.Ratio(f, nearest.A, dark.Mean) - 1) <= FlatPairing.MaxDrift),
        ];
        stages.Report("Response of every pixel", 0, frames.Length, 0);
        float[] mean = PixelMoments.MeanOf([.. frames.Select(f => f.Samples)], stages.Walk);
        stages.Report("Response of every pixel", frames.Length, frames.Length, frames.Length * mode.BytesPerFrame);
        return (
            [
                .. channels.Select(
                    (ch, c) =>
                    {
                        NeighbourSpread? unlit = bias.Moments is { } m
                            ? NeighbourSpread.Measure(m.Mean, m.Width, mode.Mosaic, c, ResponseNonuniformity.ClipSigmas)
                            : null;
                        double unlitNoise = bias.Moments is { } moments
                            ? (dark.Variances[c]?.Value ?? 0) / moments.Frames
                            : 0;
                        return ch with
                        {
                            Nonuniformity = ResponseNonuniformity.Measure(
                                NeighbourSpread.Measure(
                                    mean,
                                    frames[0].Frame.Width,
                                    mode.Mosaic,
                                    c,
                                    ResponseNonuniformity.ClipSigmas
                                ),
                                nearest.Channels[c].TemporalVariance.Value / frames.Length,
                                unlit,
                                unlitNoise,
                                ch.Pedestal
                            ),
                        };
                    }
                ),
            ],
            mean,
            [
                .. channels.Select(
                    (_, c) =>
                        (
                            nearest.Channels[c].TemporalVariance.Value / frames.Length
                            + (bias.Moments is { } unlit ? (dark.Variances[c]?.Value ?? 0) / unlit.Frames : 0)
                        ) / Math.Pow((nearest.Channels[c].MeanA + nearest.Channels[c].MeanB) / 2, 2)
                ),
            ]
        );
    }
}
