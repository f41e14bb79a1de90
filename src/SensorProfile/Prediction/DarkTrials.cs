using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Prediction;

/// <summary>
/// Leaves out every set of darks in turn, and every temperature, computes it from the rest, and reports how well that
/// went.
/// </summary>
/// <remarks>Done on a thinned copy of the frames in memory (<see cref="ThinnedCamera"/>): the whole chain from frames
/// to maps, glow and laws is run again without the set that is left out.
/// Where a whole temperature is left out, the law of the typical pixel is fitted again without it.</remarks>
internal static class DarkTrials
{
    /// <summary>Runs the trials; null when there is no bias, no line, or nothing that could be left out.</summary>
    /// <param name="input">The mode.</param>
    /// <param name="thresholds">Thresholds of the defect search, as chosen for the whole camera.</param>
    /// <param name="withoutTemperature">The input with the laws fitted to the temperatures that it still has.</param>
    public static DarkPredictionProfile? Run(
        PatternInput input,
        DefectThresholds thresholds,
        Func<PatternInput, PatternInput>? withoutTemperature = null
    )
    {
        if (input.Quick || input.Unlit is null || ThinnedCamera.Thin(input) is not { } camera)
            return null;
        MapMemory.Release(input.Pixels); // rows of whole frames, read for the small ones
        // which pixels flicker is decided for the whole camera, not for what a trial leaves of it
        if (PredictionTrial.Prepare(camera with { TestLevels = input.TestLevels }, thresholds) is not { } whole)
            return null;
        PixelKind[] kinds = whole.Kinds();
        IReadOnlyList<TakenMaster> masters = TakenMaster.All(camera, whole.Maps);
        var known = whole.Maps.Temperatures.ToDictionary(
            t => t.Series,
            t => t.Levels,
            (IEqualityComparer<DarkSeries>)ReferenceEqualityComparer.Instance
        );
        Case[] cases = [.. Cases(masters)];
        var results = new Result?[cases.Length];
        Parallel.For(
            0,
            cases.Length,
            new ParallelOptions
            {
                MaxDegreeOfParallelism = input.Walk.Threads,
                CancellationToken = input.Walk.Cancellation,
            },
            i =>
            {
                PatternInput rest = Without(camera, cases[i], withoutTemperature);
                if (PredictionTrial.Prepare(rest, Scaled(thresholds, camera, rest), known) is not { } trial)
                    return;
                results[i] = new(
                    cases[i],
                    [
                        .. cases[i]
                            .Masters.Select(m =>
                                MasterComparison.Compare(
                                    camera,
                                    kinds,
                                    m,
                                    trial.Master(m.Series.TemperatureCelsius, m.Exposure.Seconds),
                                    BrightnessClass.Noise(PredictionTrial.UnlitNoise(camera), trial.TypicalSignal(m))
                                ) with
                                {
                                    TypicalSignal = trial.TypicalSignal(m),
                                }
                            ),
                    ]
                );
            }
        );
        Result[] done = [.. results.OfType<Result>()];
        return done.Length == 0
            ? null
            : Summary(camera, whole, done, new PlainProcedures(camera, whole.Laws, kinds, masters), masters);
    }

    private static IEnumerable<Case> Cases(IReadOnlyList<TakenMaster> masters)
    {
        TakenMaster[][] temperatures = [.. masters.GroupBy(m => m.Temperature).Select(g => g.ToArray())];
        foreach (TakenMaster[] own in temperatures.Where(t => t.Length > 1))
        foreach (TakenMaster master in own)
            yield return new(false, false, [master]);
        if (temperatures.Length < 2)
            yield break;
        for (int t = 0; t < temperatures.Length; t++)
            yield return new(true, t == 0 || t == temperatures.Length - 1, temperatures[t]);
    }

    private static PatternInput Without(PatternInput camera, Case left, Func<PatternInput, PatternInput>? refitted)
    {
        HashSet<DarkExposure> gone = new(left.Masters.Select(m => m.Exposure), ReferenceEqualityComparer.Instance);
        DarkSeries[] rest =
        [
            .. camera
                .Series.Select(s =>
                    s.Exposures.Any(gone.Contains)
                        ? s with
                        {
                            Exposures = [.. s.Exposures.Where(e => !gone.Contains(e))],
                        }
                        : s
                )
                .Where(s => s.Exposures.Count > 0),
        ];
        PatternInput reduced = camera with
        {
            Series = rest,
            MinLawTemperatures = rest.Length == 2 ? 2 : camera.MinLawTemperatures,
            Walk = camera.Walk with { Threads = 1, RowsDone = null },
        };
        if (!left.WholeTemperature)
            return reduced;
        // Maps hold for a measured temperature: glow and hot pixels are read there, not brought there by the typical
        // law.
        double reference = rest.MinBy(s =>
            Math.Abs(s.TemperatureCelsius - camera.ReferenceTemperature)
        )!.TemperatureCelsius;
        double own = left.Masters[0].Series.TemperatureCelsius;
        if (Math.Abs(own - camera.ReferenceTemperature) < Math.Abs(reference - camera.ReferenceTemperature))
            reduced = reduced with { ReferenceTemperature = reference, TypicalAtReference = Moved(camera, reference) };
        return refitted is not null ? refitted(reduced) : reduced;
    }

    private static Measurement? Moved(PatternInput camera, double reference) =>
        camera is { TypicalLaw: { } law, TypicalAtReference: { } typical }
            ? typical with
            {
                Value = law(reference),
            }
            : null;

    /// <summary>The same thresholds at another reference temperature.</summary>
    private static DefectThresholds Scaled(DefectThresholds thresholds, PatternInput camera, PatternInput rest)
    {
        if (rest.ReferenceTemperature == camera.ReferenceTemperature || camera.TypicalLaw is not { } law)
            return thresholds;
        double factor = law(rest.ReferenceTemperature) / law(camera.ReferenceTemperature);
        return thresholds with { HotRate = thresholds.HotRate * factor, WarmRate = thresholds.WarmRate * factor };
    }

    private static DarkPredictionProfile Summary(
        PatternInput camera,
        PredictionTrial whole,
        Result[] done,
        PlainProcedures plain,
        IReadOnlyList<TakenMaster> masters
    )
    {
        PredictionTest? Test(Func<Case, bool> which) =>
            PredictionJudge.Claim([.. done.Where(r => which(r.Case)).SelectMany(r => r.Comparisons)]);
        MasterComparison[] judged = [.. done.Where(r => !r.Case.Extrapolated).SelectMany(r => r.Comparisons)];
        if (judged.Length == 0)
            judged = [.. done.SelectMany(r => r.Comparisons)];
        PredictionTest? byExposure = Test(c => !c.WholeTemperature),
            byTemperature = Test(c => c is { WholeTemperature: true, Extrapolated: false });
        PredictionTest?[] ways = [byExposure, byTemperature];
        PredictionTest? beyond = Test(c => c is { WholeTemperature: true, Extrapolated: true });
        PredictionFigures? all = ClassTally.Pool(
            (ways.All(w => w is null) ? [beyond] : ways).SelectMany(w =>
                new[] { w?.Typical, w?.Hot, w?.Glow, w?.Flickering }
            )
        );
        (double level, double share) = PredictionJudge.LevelDoubt(judged);
        return new DarkPredictionProfile
        {
            Passed = byExposure is { Passed: true } && byTemperature is not { Passed: false },
            Coverage = all?.Coverage ?? 0,
            Residual = ClassTally.Pool(judged.Select(c => c.Figures(PixelKind.Typical)))?.Residual,
            ByExposure = byExposure,
            ByTemperature = byTemperature,
            Beyond = beyond,
            Colder = Test(c => c.Extrapolated && c.Masters[0].Temperature == 0),
            Warmer = Test(c => c.Extrapolated && c.Masters[0].Temperature > 0),
            ScalingByExposure = PredictionJudge.Judge(plain.ByExposure()),
            ScalingByTemperature = PredictionJudge.Judge(plain.ByTemperature()),
            Interpolation = PredictionJudge.Judge(plain.Mixed()),
            Sets =
            [
                .. done.SelectMany(r => r.Case.Masters.Zip(r.Comparisons, (m, c) => Record(r.Case, m, c)))
                    .OrderBy(s => s.LeftOut, StringComparer.Ordinal)
                    .ThenBy(s => s.Temperature)
                    .ThenBy(s => s.Exposure),
            ],
            PixelsCompared = camera.Pixels,
            LevelDoubt = new(
                level,
                level / Math.Sqrt(2.0 * judged.Length),
                "e-",
                judged.Length,
                "root mean square over the fainter half of the left-out sets"
            ),
            LevelDoubtShare = share,
            TypicalRate = whole.Laws.TypicalRate,
            TypicalUncertainty = whole.Maps.TypicalUncertainty,
            UnlitNoise = PredictionTrial.UnlitNoise(camera),
            PedestalShare = whole.Laws.PedestalShare,
            LawCorrelation = whole.Laws.LawCorrelation,
            ExposureRange = [masters.Min(m => m.Exposure.TakenSeconds), masters.Max(m => m.Exposure.TakenSeconds)],
        };
    }

    private static LeftOutSet Record(Case left, TakenMaster master, MasterComparison comparison) =>
        new()
        {
            Temperature = master.Series.TemperatureCelsius,
            Exposure = master.Exposure.TakenSeconds,
            Frames = master.Exposure.Frames.Count,
            LeftOut = left.WholeTemperature ? "temperature" : "set",
            Extrapolated = left.Extrapolated,
            Level = comparison.Level,
            Typical = comparison.Figures(PixelKind.Typical),
            Hot = comparison.Figures(PixelKind.Hot),
            Glow = comparison.Figures(PixelKind.Glow),
            Flickering = comparison.Figures(PixelKind.Flickering),
        };

    private sealed record Case(bool WholeTemperature, bool Extrapolated, TakenMaster[] Masters);

    private sealed record Result(Case Case, MasterComparison[] Comparisons);
}
