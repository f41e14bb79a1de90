using SensorProfile.Characterisation.Summaries;
using SensorProfile.DarkCurrent.Laws;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Fitting.Models;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>
/// Dark frames → dark rate at every temperature (level and variance form, EMVA 1288) → temperature law.
/// </summary>
internal static class DarkRecipe
{
    /// <summary>Share of the saturation level above which a pixel counts as full.</summary>
    private const double NearSaturation = 0.95;

    public static DarkResult Measure(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        CharacterisationOptions options,
        StageProgress stages,
        FindingsLog log
    )
    {
        IReadOnlyList<ScreenedSet> sets = Unsaturated(mode.SetsOf(FrameKind.Dark), flats, log);
        if (sets.Count == 0)
            return new();
        Measurement[] gains = [.. mode.Mosaic.Names.Select((_, c) => flats.GainOf(c)).OfType<Measurement>()];
        if (gains.Length == mode.Mosaic.Channels)
            return Measure(sets, bias, flats, gains, inElectrons: true, mode, options, stages, log);
        log.Add(
            FindingCodes.GainMissingForElectrons,
            Severity.Refusal,
            "There are dark frames but no gain to turn ADU into electrons, so dark current is given in ADU only: add "
                + "flat pairs at the same settings."
        );
        var said = new FindingsLog();
        Measurement one = new(1, 0, "1", 1, "no gain");
        DarkResult adu = Measure(
            sets,
            bias,
            flats,
            [.. mode.Mosaic.Names.Select(_ => one)],
            inElectrons: false,
            mode,
            options,
            stages,
            said
        );
        log.Add(said.Findings.Select(DarkSummary.InAdu));
        return new DarkResult
        {
            ProfileAdu = adu.Profile is { } profile ? DarkSummary.InAdu(profile) : null,
            TemperaturesAdu = adu.Temperatures,
            Nights = [.. adu.Nights.Select(DarkSummary.InAdu)],
        };
    }

    private static DarkResult Measure(
        IReadOnlyList<ScreenedSet> sets,
        BiasResult bias,
        FlatResult flats,
        Measurement[] gains,
        bool inElectrons,
        ModeFrames mode,
        CharacterisationOptions options,
        StageProgress stages,
        FindingsLog log
    )
    {
        double probeJumps = ProbeSteps.Find(sets.Select(s => s.Set.Frames));
        IReadOnlyList<TemperatureGroup> levels = TemperatureGroup.Gather(
            sets.Select(s => s.Set),
            ProbeSteps.Widen(options.TemperatureTolerance, probeJumps)
        );
        FrameSet[] unknown = [.. levels.Where(l => l.TemperatureCelsius is null).SelectMany(l => l.Sets)];
        double saturation =
            NearSaturation
            * (
                flats.Channels.Select(c => c.SaturationLevel?.Value).Min()
                ?? sets.SelectMany(s => s.Frames).SelectMany(f => f.Channels).Max(c => c.Maximum)
            );
        var pairs = PairsBySet(sets, mode, stages);
        TemperatureGroup[] known = [.. levels.Where(l => l.TemperatureCelsius is not null)];
        // Both the bias that noise adds to a median and the signal inferred from the growth of the noise need
        // electrons.
        MedianShift shift = !inElectrons
            ? MedianShift.None
            : MedianShift.Measure(
                [.. known.Select(l => sets.Where(s => l.Sets.Contains(s.Set)).ToArray())],
                bias,
                mode,
                [.. gains.Select(g => g.Value)],
                stages.Walk
            );
        DarkTemperature Of(TemperatureGroup level, MedianShift shift, double doubling)
        {
            var at = Temperature(level, sets, pairs, bias, gains, shift, saturation, doubling, mode);
            return inElectrons ? at : at with { Variance = null, LocalVariance = null };
        }
        DarkTemperature[] At(double doubling) => [.. known.Select(l => Of(l, shift, doubling))];
        DarkTemperature[] byNight =
        [
            .. NightRates
                .Split(unknown)
                .Select(night =>
                    Of(new TemperatureGroup(0, night), MedianShift.None, PhysicalConstants.AssumedDoubling)
                ),
        ];
        DarkNight[] nights =
        [
            .. byNight.Select(n => NightRates.Of(n, DarkSummary.Point(n, gains, DarkSummary.UseVariance(byNight)))),
        ];
        NightRates.Report(nights, [.. unknown.SelectMany(s => s.Frames).Select(f => f.Name)], log);
        // A first guess brings the sets of one temperature to their mean; the fit's own value replaces it.
        DarkTemperature[] temperatures = At(PhysicalConstants.AssumedDoubling);
        TemperatureFitResult? fit = FitLaw(temperatures, gains, DarkSummary.UseVariance(temperatures), options);
        if (fit?.DoublingTemperature is { } own)
        {
            temperatures = At(own.Value);
            fit = FitLaw(temperatures, gains, DarkSummary.UseVariance(temperatures), options);
        }
        if (temperatures.Length == 0)
            return new() { Nights = nights };
        DarkFindings.Report(temperatures, mode, log);
        log.Add(fit?.Findings ?? []);
        return new DarkResult
        {
            Profile = DarkSummary.Summarise(temperatures, fit, gains),
            Temperatures = temperatures,
            Nights = nights,
        };
    }

    /// <summary>The sets whose typical pixel is not full: a full pixel says nothing about dark current.</summary>
    private static IReadOnlyList<ScreenedSet> Unsaturated(
        IReadOnlyList<ScreenedSet> sets,
        FlatResult flats,
        FindingsLog log
    )
    {
        if (flats.Channels.Select(c => c.SaturationLevel?.Value).Min() is not { } full)
            return sets;
        ILookup<bool, ScreenedSet> byState = sets.ToLookup(s =>
            s.Frames.Any(f => f.Channels.Any(c => c.Median >= NearSaturation * full))
        );
        string[] names = [.. byState[true].SelectMany(s => s.Frames).Select(f => f.Name)];
        if (names.Length > 0)
            log.Add(
                FindingCodes.DarkSaturated,
                Severity.Warning,
                $"{names.Length} dark frames are full to saturation and say nothing about dark current; they were "
                    + "not measured: take shorter or colder ones, or look for light.",
                names
            );
        return [.. byState[false]];
    }

    private static Dictionary<ScreenedSet, PairStatistics[]> PairsBySet(
        IReadOnlyList<ScreenedSet> sets,
        ModeFrames mode,
        StageProgress stages
    )
    {
        var all = sets.SelectMany(s => s.Pairs().Select(p => (Set: s, p.A, p.B))).ToArray();
        PairStatistics[] statistics = stages.ForEach("Dark pairs", all, 2, mode.BytesPerFrame, p =>
            PairStatistics.Measure(p.A.Samples, p.B.Samples, mode.Mosaic, options: stages.SingleThread)
        );
        return sets.ToDictionary(s => s, s => statistics.Where((_, i) => ReferenceEquals(all[i].Set, s)).ToArray());
    }

    private static DarkTemperature Temperature(
        TemperatureGroup level,
        IReadOnlyList<ScreenedSet> all,
        Dictionary<ScreenedSet, PairStatistics[]> pairsBySet,
        BiasResult bias,
        Measurement[] gains,
        MedianShift shift,
        double saturation,
        double doubling,
        ModeFrames mode
    )
    {
        ScreenedSet[] sets = [.. all.Where(s => level.Sets.Contains(s.Set) && s.Set.ExposureSeconds is not null)];
        double temperature = level.TemperatureCelsius!.Value,
            step = ProbeReadings.Step(sets);
        double Equivalent(ScreenedSet s) => ProbeReadings.EquivalentExposure(s, sets, temperature, doubling);
        double ExposureOf(ScreenedSet s) => s.Set.Kind == FrameKind.Bias ? s.Set.ExposureSeconds ?? 0 : Equivalent(s);
        var pairs = sets.SelectMany(s => pairsBySet[s].Select(p => (ExposureSeconds: Equivalent(s), Pair: p))).ToList();
        // A single exposure makes no line; the bias frames then supply the level at no exposure.
        ScreenedSet[] withZero =
            sets.Select(s => s.Set.ExposureSeconds).Distinct().Count() > 1 ? sets : [.. bias.Sets, .. sets];
        var levels = new DarkLevels(withZero, gains, ExposureOf);
        PooledVariance?[] biasVariances = [.. bias.Channels.Select(c => c.Variance)];

        DarkSignalFit? typical = DarkSlopes.Typical(levels, shift);
        DarkSignalFit? mean = DarkSlopes.Mean(levels, withZero, saturation);
        double unit = gains.Average(g => g.Value);
        var result = new DarkTemperature
        {
            TemperatureCelsius = temperature,
            TemperatureUncertainty = ProbeReadings.TemperatureUncertainty(sets, step),
            Sets = sets,
            Typical = typical,
            Shift = shift,
            Mean = mean,
            Variance = DarkSlopes.Variance(DarkLevels.Variances(pairs, biasVariances, gains)),
            Channels =
                gains.Length == 1
                    ? []
                    :
                    [
                        .. gains.Select(
                            (_, c) =>
                                (
                                    DarkSlopes.Typical(levels, shift, c),
                                    DarkSlopes.Variance(DarkLevels.Variances(pairs, biasVariances, gains, c))
                                )
                        ),
                    ],
            Levels = DarkLevels.ForPlots(
                sets,
                (typical?.Intercept.Value ?? 0) / unit,
                (mean?.Intercept.Value ?? 0) / unit,
                s => gains.Select((g, c) => shift.Of(s, c) / g.Value).Average(),
                [.. sets.SelectMany(s => pairsBySet[s].Select(p => (s.Set.ExposureSeconds!.Value, p)))]
            ),
        };
        return !result.LevelPinned
            ? result
            : result with
            {
                LocalVariance = LocalVariance.Slope(
                    [.. bias.Sets, .. sets],
                    ExposureOf,
                    gains,
                    mode.Mosaic,
                    mode.CodeStep.Step
                ),
            };
    }

    /// <summary>The temperature law by the level or the variance form; null without a rate.</summary>
    public static TemperatureFitResult? FitLaw(
        DarkTemperature[] temperatures,
        Measurement[] gains,
        bool variance,
        CharacterisationOptions options
    )
    {
        TypedScale[] nights =
        [
            .. temperatures.SelectMany(t => t.Sets).Select(s => s.Set.TypedScale).OfType<TypedScale>().Distinct(),
        ];
        TemperaturePoint[] points =
        [
            .. temperatures
                .Select(t => (Temperature: t, Line: variance ? t.Variance : t.Typical))
                .Where(t =>
                    t.Line is { Slope.StandardUncertainty: > 0 } line
                    && double.IsFinite(line.Slope.Value)
                    && double.IsFinite(line.Slope.StandardUncertainty)
                )
                .Select(t => new TemperaturePoint(
                    t.Temperature.TemperatureCelsius,
                    t.Line!.Slope.Value,
                    t.Line.Slope.StandardUncertainty,
                    t.Temperature.TemperatureUncertainty
                )
                {
                    SharedErrors =
                    [
                        .. ProbeReadings.SharedErrors(t.Temperature.Sets, t.Temperature.TemperatureCelsius, nights),
                    ],
                }),
        ];
        if (points.Length == 0)
            return null;
        return TemperatureFit.Fit(
            points,
            options.ReferenceTemperature ?? ReferenceTemperature.Choose(points),
            DarkSummary.CommonRelativeUncertainty(gains, variance)
        );
    }
}
