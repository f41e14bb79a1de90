using SensorProfile.Fits;
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
/// Computes a master dark that was never taken, from the per-pixel maps; refused where darks that were left out did not
/// come out right.
/// </summary>
public static class DarkPrediction
{
    private const double WorthSaying = 0.8;

    /// <summary>The computed master with what speaks for it.</summary>
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
        bool pinned = mode.DarkCurrent!.Form == "variance";
        double top = mode.SaturationLevel?.Value ?? ushort.MaxValue;
        double levelDoubt = pinned ? 0 : LevelDoubt(trials, Binds(mode.DarkCurrent!) ? test : null, laws, question);
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
                new ClassClaims(
                    test,
                    trials,
                    new DarkForecast(laws, question.TemperatureCelsius, question.ExposureSeconds).Typical
                ),
                cancellation
            );
        List<Finding> findings = [.. known, .. Findings(trials, test, proof, pixels, pinned, levelDoubt)];
        PredictionCheck? check = question.Against is { } fresh
            ? PredictionCheck.Run(fresh, mode, question, pixels, mosaic, gains, cancellation)
            : null;
        if (check is not null)
            findings.AddRange(check.Findings);
        bool contradicted = check is { Agrees: false };
        double typical = Median(pixels.Doubts.Ordinary),
            frames = EquivalentFrames(profile, mode, laws, question, typical);
        return new DarkPredictionAnswer
        {
            Verdict = contradicted ? PredictionVerdict.CannotTell : PredictionVerdict.Computed,
            ExposureSeconds = question.ExposureSeconds,
            TemperatureCelsius = question.TemperatureCelsius,
            Quantities = Quantities(pixels, test, typical, frames, check),
            Findings = findings,
            Trials = trials,
            Proof = proof,
            Test = test,
            Refused = pixels.Refused,
            Master = contradicted
                ? null
                : new ComputedDark(
                    profile.Camera.Width,
                    profile.Camera.Height,
                    pixels.Values,
                    pixels.Uncertainty,
                    [.. Cards(profile, mode, question, test, typical, pixels.Refused.Sum(r => r.Pixels))]
                ),
        };
    }

    /// <summary>
    /// Whether a trial leaves temperatures enough: with one of three left out any law passes through the other two, and what
    /// it is off by in between says little of the law that three bind.
    /// </summary>
    private static bool Binds(DarkCurrentProfile dark) => dark.Points.Select(p => p.Temperature).Distinct().Count() > 3;

    /// <summary>By the sets of the trial that speaks for the question; by all where they do not say.</summary>
    private static double LevelDoubt(
        DarkPredictionProfile trials,
        PredictionTest? test,
        ForecastLaws laws,
        DarkPredictionQuestion question
    )
    {
        double constant = test?.LevelDoubt ?? trials.LevelDoubt?.Value ?? 0,
            share =
                (test?.LevelDoubtShare ?? trials.LevelDoubtShare)
                * new DarkForecast(laws, question.TemperatureCelsius, question.ExposureSeconds).Typical;
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
                "gain-missing",
                "The profile has no gain to turn electrons into ADU: add flat pairs and characterise again."
            );
    }

    private static ForecastLaws Laws(ModeProfile mode, DarkPredictionProfile trials)
    {
        FixedPatternProfile pattern = mode.FixedPattern!;
        double reference = pattern.ReferenceTemperature
            ?? mode.DarkCurrent?.ReferenceTemperature
            ?? throw Refuse.CannotTell(
                "dark-current-missing",
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
            Glow = GlowGrowth.Of(pattern.Glow, [.. (nearest?.Levels ?? []).Select(l => (l.Exposure, l.Frames))]),
            LawCorrelation = trials.LawCorrelation,
            PedestalShare = trials.PedestalShare,
        };
    }

    /// <summary>Frames of a taken master dark that would be as noisy in the typical pixel: σ²/u².</summary>
    private static double EquivalentFrames(
        CameraProfile profile,
        ModeProfile mode,
        ForecastLaws laws,
        DarkPredictionQuestion question,
        double doubt
    )
    {
        if (mode.ReadNoise is not { } read || !(doubt > 0))
            return double.NaN;
        double step = Math.Max(profile.Camera.CodeStep, 1) * (mode.Gain?.Value ?? 1);
        return (
                read.Value * read.Value
                + step * step / 12
                + new DarkForecast(laws, question.TemperatureCelsius, question.ExposureSeconds).Typical
            ) / (doubt * doubt);
    }

    private static IEnumerable<Finding> Findings(
        DarkPredictionProfile trials,
        PredictionTest test,
        PredictionProof proof,
        PredictedPixels pixels,
        bool pinned,
        double levelDoubt
    )
    {
        if (pinned)
            yield return new(
                "level-pinned",
                Severity.Warning,
                "The camera pins its black level, so the computed dark keeps the level of the bias frames: the "
                    + "pattern is right, a common offset may remain and is no noise."
            );
        if (pixels.Refused.Count > 0)
            yield return new("class-refused", Severity.Warning, ClassNames.Refusal(pixels.Refused));
        PredictionClass? unsteady = test
            .Classes.Where(c => c is { Pixels: "hot", Refused: null, PlainCoverage: < 0.9 })
            .MinBy(c => c.PlainCoverage);
        if (unsteady is not null)
            yield return new(
                "hot-pixels-unsteady",
                Severity.Note,
                $"Some hot pixels change from set to set: of {ClassNames.Of(unsteady)} "
                    + $"{Plain.Percent(1 - unsteady.PlainCoverage)} lay outside the 95 % interval of their noise, so their "
                    + "uncertainty is widened until it holds 95 %. Dithering and rejection take care of them."
            );
        (PredictionTest? plain, string way) =
            proof == PredictionProof.Exposure
                ? (trials.ScalingByExposure, "scaled by exposure")
                : (trials.Interpolation, "mixed of the next colder and the next warmer temperature");
        if (
            plain is { Passed: true, Hot: { } less }
            && test.Hot is { } left
            && less.Residual.Value < WorthSaying * left.Residual.Value
        )
            yield return new(
                "plain-way-leaves-less",
                Severity.Note,
                $"A dark {way} left {Plain.Number(less.Residual.Value, 2)} e⁻ in the hot pixels of the same trials, "
                    + $"the computed one {Plain.Number(left.Residual.Value, 2)} e⁻: where you have such darks, they do "
                    + "better."
            );
        if (pixels.Unmeasured > 0)
            yield return new(
                "pixels-not-measured",
                Severity.Note,
                $"{Plain.Whole(pixels.Unmeasured)} pixels have no measured dark rate (full in every dark); their "
                    + "uncertainty is not a number."
            );
        if (pixels.Full > 0)
            yield return new(
                "pixels-full",
                Severity.Note,
                $"{Plain.Whole(pixels.Full)} hot pixels are full in the computed dark, as they will be in the "
                    + "lights."
            );
        if (levelDoubt > 0)
            yield return new(
                "level-doubt",
                Severity.Note,
                $"The common level is known to {Plain.Number(levelDoubt, 2)} e⁻ by the darks that were left out; "
                    + "this is in the uncertainty of every pixel and is no noise."
            );
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
            ["level"] = new(sum / Math.Max(1, n), 0, "ADU", n, "mean of the computed dark"),
            ["uncertaintyTypical"] = new(typical, 0, "e-", pixels.Doubts.Ordinary.Count, "median standard uncertainty"),
            ["uncertaintyHot"] =
                pixels.Doubts.Hot.Count == 0
                    ? null
                    : new(Median(pixels.Doubts.Hot), 0, "e-", pixels.Doubts.Hot.Count, "median standard uncertainty"),
            ["equivalentFrames"] = double.IsFinite(frames)
                ? new(frames, 0, "1", 1, "frames of a taken master as noisy in the typical pixel")
                : null,
            ["coverageTypical"] = Share(test.Typical),
        };
        if (test.Hot is { } hot)
            quantities["coverageHot"] = Share(hot);
        if (test.Glow is { } glow)
            quantities["coverageGlow"] = Share(glow);
        if (test.Flickering is { } flickering)
            quantities["coverageFlickering"] = Share(flickering);
        if (check is not null)
            quantities["coverageAgainst"] = check.Coverage;
        return quantities;
    }

    private static IEnumerable<FitsCard> Cards(
        CameraProfile profile,
        ModeProfile mode,
        DarkPredictionQuestion question,
        PredictionTest test,
        double typical,
        long refused
    )
    {
        yield return FitsCard.Of("IMAGETYP", "Master Dark", "computed, not taken");
        yield return FitsCard.Of("EXPTIME", question.ExposureSeconds, "[s] exposure it is computed for");
        yield return FitsCard.Of("CCD-TEMP", question.TemperatureCelsius, "[degC] temperature it is computed for");
        yield return FitsCard.Of("INSTRUME", profile.Camera.Name, "camera");
        if (mode.Settings.Gain is { } gain)
            yield return FitsCard.Of("GAIN", gain, "gain setting");
        if (mode.Settings.Offset is { } offset)
            yield return FitsCard.Of("OFFSET", offset, "offset setting");
        if (mode.Settings.Iso is { } iso)
            yield return FitsCard.Of("ISOSPEED", iso, "ISO setting");
        string[] binning = mode.Settings.Binning.Split('x');
        if (binning is [string x, string y] && int.TryParse(x, out int across) && int.TryParse(y, out int along))
        {
            yield return FitsCard.Of("XBINNING", across);
            yield return FitsCard.Of("YBINNING", along);
        }
        if (mode.Settings.Readout is { Length: > 0 } readout)
            yield return FitsCard.Of("READOUTM", readout);
        if (profile.Camera.ColourFilter is { } filter)
            yield return FitsCard.Of("BAYERPAT", filter, "from the first row of the file");
        yield return FitsCard.Of("CONTENT", "Master dark computed from per-pixel maps, pedestal included");
        yield return FitsCard.Of(
            "CREATOR",
            $"{profile.Software.Name} {profile.Software.Version}",
            "that made the maps"
        );
        yield return FitsCard.Of("INDIGEST", profile.Frames.InputDigest, "digest of the frames behind the maps");
        yield return FitsCard.Of("DKUNCERT", typical, "[e-] median standard uncertainty, ordinary pixels");
        if (test.Typical is { } ordinary)
            yield return FitsCard.Of(
                "DKCOVTYP",
                Math.Round(ordinary.Coverage, 4),
                "left-out ordinary pixels within 95 %"
            );
        if (test.Hot is { } hot)
            yield return FitsCard.Of("DKCOVHOT", Math.Round(hot.Coverage, 4), "left-out hot pixels within 95 %");
        if (test.Glow is { } glow)
            yield return FitsCard.Of(
                "DKCOVGLO",
                Math.Round(glow.Coverage, 4),
                "left-out pixels in the glow within 95 %"
            );
        if (refused > 0)
            yield return FitsCard.Of("DKREFUSD", refused, "pixels of which no uncertainty is claimed");
    }

    private static double Median(IReadOnlyList<float> values)
    {
        double[] known = [.. values.Where(float.IsFinite).Select(v => (double)v)];
        return known.Length == 0 ? double.NaN : OrderStatistics.Median(known);
    }
}
