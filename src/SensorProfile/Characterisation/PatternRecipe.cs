using SensorProfile.DarkCurrent.Laws;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Prediction;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>Dark frames, bias and flats → maps of single pixels: dark rate, temperature law, defects, glow.</summary>
internal static class PatternRecipe
{
    /// <summary>
    /// Everything that a sample of the pixels can tell before there are maps of the whole sensor; null when there
    /// will be none. With <c>predict</c>, also tests how well darks can be computed from others.
    /// </summary>
    public static PreparedPattern? Prepare(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        IReadOnlyList<DefectLine> lines,
        DarkResult darks,
        CharacterisationOptions options,
        bool predict,
        StageProgress stages,
        FindingsLog log
    )
    {
        Measurement[] gains = [.. mode.Mosaic.Names.Select((_, c) => flats.GainOf(c)).OfType<Measurement>()];
        return gains.Length < mode.Mosaic.Channels
            ? null
            : Prepare(mode, bias, gains, lines, darks, options, predict, stages, log);
    }

    /// <summary>Rates of the pixels in ADU/px/s where no gain is known; null when the darks make no line.</summary>
    /// <remarks>
    /// Rates need no gain; the noise of a single pixel does, so flickering and nonlinear pixels are not judged, and
    /// thresholds given in electrons cannot be used.
    /// </remarks>
    public static PatternResult? InAdu(
        ModeFrames mode,
        BiasResult bias,
        IReadOnlyList<DefectLine> lines,
        DarkResult darks,
        CharacterisationOptions options,
        StageProgress stages
    )
    {
        Measurement one = new(1, 0, "1", 1, "no gain");
        var inAdu = new DarkResult { Profile = darks.ProfileAdu, Temperatures = darks.TemperaturesAdu };
        PreparedPattern? prepared = Prepare(
            mode,
            bias,
            [.. mode.Mosaic.Names.Select(_ => one)],
            lines,
            inAdu,
            options with
            {
                Quick = true,
                Thresholds = null,
            },
            predict: false,
            stages,
            new FindingsLog()
        );
        return prepared is null
            ? null
            : PatternMeasurement.Measure(prepared.Input with { TestLevels = false }, null, prepared.Levels);
    }

    /// <summary>The part of such rates that goes into the profile; null when there is no threshold.</summary>
    public static HotPixelsAdu? HotPixels(PatternResult? inAdu) =>
        inAdu?.Profile is not { Thresholds: { } thresholds } found
            ? null
            : new HotPixelsAdu
            {
                Curve = found.HotPixelCurve,
                RateQuantiles =
                [
                    .. found.RateQuantiles.Select(q => q with { Rate = q.Rate with { Unit = "ADU/px/s" } }),
                ],
                Hot = found.Defects?.Hot ?? 0,
                HotRate = thresholds.HotRate,
                ReferenceTemperature = found.ReferenceTemperature,
            };

    private static PreparedPattern? Prepare(
        ModeFrames mode,
        BiasResult bias,
        Measurement[] gains,
        IReadOnlyList<DefectLine> lines,
        DarkResult darks,
        CharacterisationOptions options,
        bool predict,
        StageProgress stages,
        FindingsLog log
    )
    {
        if (darks.Profile is not { ReferenceTemperature: { } reference } profile || darks.Temperatures.Count == 0)
            return null;
        bool variance = profile.Form == DarkForm.Variance;
        var first = mode.Frames.First().Samples;
        if (first.Height < 2 || first.Width < 2)
        {
            log.Add(
                FindingCodes.NoPicture,
                Severity.Warning,
                "The frames are a single row or column, so no maps are made: hot pixels, glow and structure need "
                    + "a picture."
            );
            return null;
        }
        var input = new PatternInput
        {
            Width = first.Width,
            Height = first.Height,
            Mosaic = mode.Mosaic,
            Gains = [.. gains.Select(g => g.Value)],
            Series = [.. darks.Temperatures.Select(t => Series(t, profile, variance))],
            ReferenceTemperature = reference,
            TypicalAtReference = profile.RateAtReference,
            TypicalLaw = ProfileLaws.Typical(profile, reference),
            ActivationLaw = ProfileLaws.Activation(profile, reference),
            Unlit = bias.Moments,
            LevelPinned = variance,
            UnlitVariance = bias.ReadNoiseAdu is { } noise
                ? noise.Value * noise.Value + mode.CodeStep.Step * mode.CodeStep.Step / 12.0
                : 0,
            UnlitSets = bias.ReadNoiseAdu is null
                ? []
                : [.. bias.Sets.Where(s => s.Frames.Count > 1).Select(s => Exposure(s, 0))],
            Lines = lines,
            CodeStep = mode.CodeStep.Step,
            TopCode = TopCode(mode),
            Thresholds = options.Thresholds,
            Quick = options.Quick,
            Missing = first.Missing,
            Walk = stages.Walk,
        };
        Dictionary<DarkSeries, SeriesLevels> levels = RateWalk.Levels(input);
        if (levels.Count == 0)
            return null;
        input = input with
        {
            Thresholds = ThresholdChoice.For(
                input.Thresholds,
                ReferenceScale.Measure(input, [.. input.Series.Where(levels.ContainsKey).Select(s => (s, levels[s]))])
            ),
        };
        DarkPredictionProfile? prediction = null;
        if (predict && !options.Quick)
        {
            stages.Stage("darks computed from the others");
            stages.Report("Darks computed from the others", 0, input.Darks, 0);
            prediction = DarkTrials.Run(input, input.Thresholds, rest =>
                Refitted(rest, darks, gains, variance, options)
            );
            MapMemory.Release(input.Pixels);
        }
        return new(input, levels, prediction);
    }

    /// <summary>The maps.</summary>
    public static PatternResult? Measure(
        PreparedPattern prepared,
        DefectClass[]? response,
        long bytesPerFrame,
        StageProgress stages,
        FindingsLog log
    )
    {
        int frames = prepared.Input.Darks;
        stages.Report("Dark rate of every pixel", 0, frames, 0);
        PatternResult? result = PatternMeasurement.Measure(prepared.Input, response, prepared.Levels);
        if (result is not null)
            result = result with { Profile = result.Profile with { DarkPrediction = prepared.Prediction } };
        stages.Report("Dark rate of every pixel", frames, frames, frames * bytesPerFrame);
        log.Add(result?.Findings ?? []);
        return result;
    }

    /// <summary>Cold and dead pixels by their response to light; null without flats.</summary>
    public static DefectClass[]? Response(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        CharacterisationOptions options
    ) =>
        flats.Mean is null
            ? null
            : DeadPixelSearch.Find(
                flats.Mean,
                bias.Moments?.Mean,
                bias.Level?.Value ?? flats.Channels.Average(c => c.Pedestal),
                mode.Frames.First().Samples.Width,
                mode.Mosaic,
                options.Thresholds ?? new()
            );

    private static DarkSeries Series(DarkTemperature t, DarkCurrentProfile profile, bool variance)
    {
        // only bridges a few tenths of a degree between sets
        double doubling = profile.DoublingTemperature?.Value ?? PhysicalConstants.AssumedDoubling;
        DarkSignalFit? line = variance ? t.Variance : t.Typical;
        return new(
            t.TemperatureCelsius,
            line is { Resolved: true } ? line.Slope.Value : 0,
            [
                .. t
                    .Sets.Select(s =>
                        Exposure(s, ProbeReadings.EquivalentExposure(s, t.Sets, t.TemperatureCelsius, doubling))
                    )
                    .OrderBy(e => e.Seconds),
            ]
        )
        {
            MedianShift = variance ? null : t.Shift.OfRate(t.Sets),
        };
    }

    private static DarkExposure Exposure(ScreenedSet set, double seconds) =>
        new(seconds, [.. set.Frames.Select(f => f.Samples)])
        {
            TakenSeconds = set.Set.ExposureSeconds ?? 0,
            // what was carried over from other frames, by time or by hot pixels, is no reading to be tested by hot pixels
            Readings = set.Frames.Any(f => f.Frame.TemperatureOrigin == TemperatureOrigin.Drawn)
                ? []
                : [.. set.Frames.Select(f => f.Frame.TemperatureCelsius)],
            StartSeconds =
            [
                .. set.Frames.Select(f =>
                    f.Frame.StartUtc is { } start ? start.ToUnixTimeMilliseconds() / 1000.0 : double.NaN
                ),
            ],
            FrameLevels = [.. set.Frames.Select(f => f.Channels.Select(c => c.ClippedMean).ToArray())],
        };

    /// <summary>The same input with the laws that its remaining temperatures give.</summary>
    private static PatternInput Refitted(
        PatternInput rest,
        DarkResult darks,
        Measurement[] gains,
        bool variance,
        CharacterisationOptions options
    )
    {
        DarkTemperature[] left =
        [
            .. darks.Temperatures.Where(t => rest.Series.Any(s => s.TemperatureCelsius == t.TemperatureCelsius)),
        ];
        TemperatureFitResult? fit = DarkRecipe.FitLaw(
            left,
            gains,
            variance,
            options with
            {
                ReferenceTemperature = rest.ReferenceTemperature,
            }
        );
        var profile = new DarkCurrentProfile
        {
            Models = fit?.Models ?? [],
            Selected = fit?.Selected,
            DoublingTemperature = fit?.DoublingTemperature,
            ReferenceTemperature = rest.ReferenceTemperature,
        };
        return rest with
        {
            TypicalAtReference = fit?.RateAtReference ?? rest.TypicalAtReference,
            TypicalLaw = ProfileLaws.Typical(profile, rest.ReferenceTemperature),
            ActivationLaw = ProfileLaws.Activation(profile, rest.ReferenceTemperature),
        };
    }

    /// <summary>
    /// The highest code any frame shows, or the end of the 16 bits when the frames never come near one.
    /// </summary>
    private static double TopCode(ModeFrames mode)
    {
        int highest = mode.Frames.Max(f => f.Channels.Max(c => c.Maximum));
        int end = ushort.MaxValue / mode.CodeStep.Step * mode.CodeStep.Step;
        return mode.Frames.Any(f => f.Channels.Any(c => c.Maximum == highest && c.ShareAtMaximum * c.Pixels >= 3))
            ? highest
            : end;
    }
}
