using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.NoiseModel;
using SensorProfile.Pixels;
using SensorProfile.Prediction;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>
/// Computes a master dark that was never taken, from the per-pixel maps; refused where darks that were left out were
/// not reproduced.
/// </summary>
public static class DarkPrediction
{
    /// <summary>The computed master with the evidence for it.</summary>
    /// <param name="profile">The camera's profile.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">Temperature, exposure, where the maps are, fresh darks to check against.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    /// <exception cref="IOException">A map is damaged; it is named.</exception>
    public static DarkPredictionAnswer Compute(
        CameraProfile profile,
        ModeProfile mode,
        DarkPredictionQuestion question,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(mode);
        ArgumentNullException.ThrowIfNull(question);
        (DarkPredictionProfile trials, PredictionTest test, PredictionProof proof, IReadOnlyList<Finding> known) =
            PredictionGate.Pass(profile, mode, question);
        double[] gains = Gains(profile, mode, out ColourMosaic mosaic);
        ForecastLaws laws = Laws(mode, trials);
        double signal = new DarkForecast(laws, question.TemperatureCelsius, question.ExposureSeconds).Typical;
        bool pinned = mode.DarkCurrent!.Form == DarkForm.Variance;
        double top = mode.SaturationLevel?.Value ?? ushort.MaxValue;
        double levelDoubt = pinned ? 0 : LevelDoubt(trials, Binds(mode.DarkCurrent!) ? test : null, signal);
        PredictedPixels pixels;
        using (PredictionMaps maps = PredictionMaps.Open(profile, mode, question.MapsFolder))
            pixels = PredictedPixels.Compute(
                maps,
                laws,
                mosaic,
                gains,
                question.TemperatureCelsius,
                question.ExposureSeconds,
                top,
                levelDoubt,
                pinned,
                new ClassClaims(test, trials, signal),
                cancellation
            );
        List<Finding> findings =
        [
            .. known,
            .. PredictionFindings.Judge(trials, test, proof, pixels, pinned, levelDoubt),
        ];
        PredictionCheck? check = question.Against is { } fresh
            ? PredictionCheck.Run(fresh, mode, question, pixels, mosaic, gains, cancellation)
            : null;
        if (check is not null)
            findings.AddRange(check.Findings);
        bool contradicted = check is { Agrees: false };
        double typical = Median(pixels.Doubts.Ordinary),
            frames = EquivalentFrames(profile, mode, signal, typical);
        return new DarkPredictionAnswer(test)
        {
            Verdict = contradicted ? PredictionVerdict.CannotTell : PredictionVerdict.Computed,
            ExposureSeconds = question.ExposureSeconds,
            TemperatureCelsius = question.TemperatureCelsius,
            Quantities = Quantities(pixels, test, typical, frames, check),
            Findings = findings,
            Trials = trials,
            Proof = proof,
            Refused = pixels.Refused,
            Master = contradicted
                ? null
                : new ComputedDark(
                    profile.Camera.Width,
                    profile.Camera.Height,
                    pixels.Values,
                    pixels.Uncertainty,
                    [.. ComputedDarkCards.Of(profile, mode, question, test, typical, pixels.Refused.Sum(r => r.Pixels))]
                ),
        };
    }

    /// <summary>
    /// Whether a trial leaves enough temperatures: with one of three left out, any law passes through the other two,
    /// and its error in between says little about the law fitted to all three.
    /// </summary>
    private static bool Binds(DarkCurrentProfile dark) => dark.Points.Select(p => p.Temperature).Distinct().Count() > 3;

    /// <summary>
    /// Uncertainty of the common level, e-, from the sets of the trial that applies to the question; from all sets
    /// where they do not say.
    /// </summary>
    /// <param name="trials">All trials.</param>
    /// <param name="test">The trial that applies to the question; null when none does.</param>
    /// <param name="signal">Signal of the typical pixel, e-.</param>
    private static double LevelDoubt(DarkPredictionProfile trials, PredictionTest? test, double signal)
    {
        double constant = test?.LevelDoubt ?? trials.LevelDoubt?.Value ?? 0,
            share = (test?.LevelDoubtShare ?? trials.LevelDoubtShare) * signal;
        return Math.Sqrt(constant * constant + share * share);
    }

    private static double[] Gains(CameraProfile profile, ModeProfile mode, out ColourMosaic mosaic)
    {
        mosaic = ColourMosaic.Of(profile.Camera.ColourFilter);
        Measurement?[] gains =
            mode.Channels.Count == mosaic.Channels && mosaic.Channels > 1
                ? [.. mode.Channels.Select(c => c.Gain)]
                : [.. Enumerable.Repeat(mode.Gain, mosaic.Channels)];
        return gains.All(g => g is { Value: > 0 })
            ? [.. gains.Select(g => g!.Value)]
            : throw Refuse.CannotTell(
                FindingCodes.GainMissing,
                "The profile has no gain to turn electrons into ADU: add flat pairs and characterise again."
            );
    }

    private static ForecastLaws Laws(ModeProfile mode, DarkPredictionProfile trials)
    {
        FixedPatternProfile pattern = mode.FixedPattern!;
        double reference = pattern.ReferenceTemperature
            ?? mode.DarkCurrent?.ReferenceTemperature
            ?? throw Refuse.CannotTell(
                FindingCodes.DarkCurrentMissing,
                "The profile states no reference temperature for its dark current: characterise again with this "
                    + "version."
            );
        DarkCurrentPoint? nearest = mode.DarkCurrent!.Points.MinBy(p => Math.Abs(p.Temperature - reference));
        return new ForecastLaws
        {
            Reference = reference,
            Typical = ProfileLaws.Typical(mode.DarkCurrent, reference),
            Activation = ProfileLaws.Activation(mode.DarkCurrent, reference),
            TypicalRate = trials.TypicalRate,
            Classes = pattern.DoublingByRate,
            Bend = LawBend.From(pattern.HotLawBend),
            Glow = GlowGrowth.Find(pattern.Glow, [.. (nearest?.Levels ?? []).Select(l => (l.Exposure, l.Frames))]),
            LawCorrelation = trials.LawCorrelation,
            PedestalShare = trials.PedestalShare,
        };
    }

    /// <summary>
    /// Number of frames of a taken master dark that would be just as noisy in the typical pixel: σ²/u².
    /// </summary>
    private static double EquivalentFrames(CameraProfile profile, ModeProfile mode, double signal, double doubt)
    {
        if (mode.ReadNoise is not { } read || !(doubt > 0))
            return double.NaN;
        double step = Math.Max(profile.Camera.CodeStep, 1) * (mode.Gain?.Value ?? 1);
        return (read.Value * read.Value + step * step / 12 + signal) / (doubt * doubt);
    }

    private static OrderedDictionary<string, Measurement?> Quantities(
        PredictedPixels pixels,
        PredictionTest test,
        double typical,
        double frames,
        PredictionCheck? check
    )
    {
        double sum = 0;
        long n = 0;
        foreach (float v in pixels.Values)
            if (float.IsFinite(v))
                (sum, n) = (sum + v, n + 1);
        Measurement? Share(PredictionFigures? f) =>
            f is null
                ? null
                : new(
                    100 * f.Coverage,
                    100 * Math.Sqrt(f.Coverage * (1 - f.Coverage) / f.Pixels),
                    "%",
                    f.Pixels,
                    "left-out pixels within their 95 % interval"
                );
        var quantities = new OrderedDictionary<string, Measurement?>
        {
            [QuantityNames.Level] = new(sum / Math.Max(1, n), 0, "ADU", n, "mean of the computed dark"),
            [QuantityNames.UncertaintyTypical] = new(
                typical,
                0,
                "e-",
                pixels.Doubts.Ordinary.Count,
                "median standard uncertainty"
            ),
            [QuantityNames.UncertaintyHot] =
                pixels.Doubts.Hot.Count == 0
                    ? null
                    : new(Median(pixels.Doubts.Hot), 0, "e-", pixels.Doubts.Hot.Count, "median standard uncertainty"),
            [QuantityNames.EquivalentFrames] = double.IsFinite(frames)
                ? new(frames, 0, "1", 1, "frames of a taken master as noisy in the typical pixel")
                : null,
            [QuantityNames.CoverageTypical] = Share(test.Typical),
        };
        if (test.Hot is { } hot)
            quantities[QuantityNames.CoverageHot] = Share(hot);
        if (test.Glow is { } glow)
            quantities[QuantityNames.CoverageGlow] = Share(glow);
        if (test.Flickering is { } flickering)
            quantities[QuantityNames.CoverageFlickering] = Share(flickering);
        if (check is not null)
            quantities[QuantityNames.CoverageAgainst] = check.Coverage;
        return quantities;
    }

    private static double Median(IReadOnlyList<float> values)
    {
        double[] known = [.. values.Where(float.IsFinite).Select(v => (double)v)];
        return known.Length == 0 ? double.NaN : OrderStatistics.Median(known);
    }
}
