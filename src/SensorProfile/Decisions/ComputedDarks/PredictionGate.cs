using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>
/// Decides which questions for a computed dark are answered: those to which trials on left-out darks apply.
/// </summary>
internal static class PredictionGate
{
    /// <summary>A temperature this close to a measured one counts as that, °C.</summary>
    private const double SameTemperature = 0.5;

    /// <summary>Exposures up to this many times the longest dark are answered, with a finding.</summary>
    private const double LongestExposureFactor = 2;

    /// <summary>The trial that applies to the question, and what the user should know; refuses otherwise.</summary>
    /// <exception cref="DecisionRefusedException">The question is wrong, or no trial applies to it.</exception>
    public static (
        DarkPredictionProfile Trials,
        PredictionTest Test,
        PredictionProof Proof,
        IReadOnlyList<Finding> Findings
    ) Pass(CameraProfile profile, ModeProfile mode, DarkPredictionQuestion question)
    {
        Refuse.UnlessPositive(question.ExposureSeconds, FindingCodes.ExposureNotPositive, "exposure", "s");
        if (!double.IsFinite(question.TemperatureCelsius))
            throw Refuse.BadArgument(FindingCodes.TemperatureNotANumber, "The temperature must be a number in °C.");
        DarkPredictionProfile trials = mode.FixedPattern?.DarkPrediction ?? throw NotTried(profile, mode);
        if (mode.ReadNoiseAdu is null && profile.Findings.Any(f => f.Code == FindingCodes.BlackClipped))
            throw Refuse.CannotTell(
                FindingCodes.PedestalUnknown,
                "The black level of this camera is cut off, so its pedestal cannot be known and no dark can be "
                    + "computed: raise the offset and take all frames again."
            );
        List<Finding> findings = [];
        Exposure(trials, question.ExposureSeconds, findings);
        (PredictionTest? test, PredictionProof proof) = Trial(mode, trials, question.TemperatureCelsius, findings);
        if (test is null)
            throw Refuse.CannotTell(
                FindingCodes.PredictionNotValidated,
                "No trial with left-out darks shows whether a dark at "
                    + $"{Plain.Celsius(question.TemperatureCelsius)} can be computed: add darks of two or more exposures "
                    + "at three or more temperatures and characterise again."
            );
        if (trials.ByExposure is { Passed: false } exposure)
            throw Failed(exposure, "another exposure");
        if (!test.Passed)
            throw Failed(
                test,
                proof == PredictionProof.Beyond ? "a temperature beyond the others" : "another temperature"
            );
        return (trials, test, proof, findings);
    }

    private static void Exposure(DarkPredictionProfile trials, double seconds, List<Finding> findings)
    {
        if (trials.ExposureRange is not [_, double longest] || seconds <= longest * 1.001)
            return;
        if (seconds > LongestExposureFactor * longest)
            throw Refuse.CannotTell(
                FindingCodes.ExposureOutsideProfile,
                $"An exposure of {Plain.Seconds(seconds)} is more than twice the longest dark of this profile, "
                    + $"{Plain.Seconds(longest)}: add darks of {Plain.Seconds(seconds)} and characterise again."
            );
        findings.Add(
            new(
                FindingCodes.ExposureBeyondDarks,
                Severity.Warning,
                $"The longest dark of the profile is {Plain.Seconds(longest)}; for {Plain.Seconds(seconds)} the "
                    + "computed dark assumes that the signal of every pixel keeps growing in proportion."
            )
        );
    }

    private static (PredictionTest? Test, PredictionProof Proof) Trial(
        ModeProfile mode,
        DarkPredictionProfile trials,
        double celsius,
        List<Finding> findings
    )
    {
        double[] measured =
        [
            .. mode.DarkCurrent?.Points.Select(p => p.Temperature).Order() ?? Enumerable.Empty<double>(),
        ];
        if (measured.Any(t => Math.Abs(t - celsius) <= SameTemperature))
            return (trials.ByExposure ?? trials.ByTemperature ?? trials.Beyond, PredictionProof.Exposure);
        if (measured.Length == 0)
            return (null, PredictionProof.Temperature);
        double beyond = Math.Max(measured[0] - celsius, celsius - measured[^1]);
        string range = $"{Plain.Celsius(measured[0])} to {Plain.Celsius(measured[^1])}";
        if (beyond > Refuse.ExtrapolationCelsius)
            throw Refuse.CannotTell(
                FindingCodes.TemperatureOutsideProfile,
                $"{Plain.Celsius(celsius)} is more than {Plain.Whole((long)Refuse.ExtrapolationCelsius)} °C "
                    + $"outside the measured range, {range}: add darks near {Plain.Celsius(celsius)} and characterise "
                    + "again."
            );
        if (beyond <= 0)
            return (trials.ByTemperature ?? trials.Beyond, PredictionProof.Temperature);
        double tried =
            measured.Length < 2 ? 0
            : celsius < measured[0] ? measured[1] - measured[0]
            : measured[^1] - measured[^2];
        string further =
            beyond > tried + SameTemperature ? $", and further from them than was tried ({Plain.Celsius(tried)})" : "";
        findings.Add(
            new(
                FindingCodes.Extrapolated,
                Severity.Warning,
                $"{Plain.Celsius(celsius)} lies outside the measured range, {range}{further}: the computed dark there "
                    + "rests on the pixels' laws, not on darks."
            )
        );
        // each end has its own trial: laws fail at the cold end first, where little is left of a pixel's own dark current
        PredictionTest? end = celsius < measured[0] ? trials.Colder : trials.Warmer;
        return (end ?? trials.Beyond, PredictionProof.Beyond);
    }

    private static DecisionRefusedException NotTried(CameraProfile profile, ModeProfile mode) =>
        WithoutBias(profile, mode)
            ? Refuse.CannotTell(
                FindingCodes.PredictionNotValidated,
                "The profile was made without bias frames, and a computed dark stands on them: take 16 bias frames "
                    + "with these settings (about 30 s) and characterise again, together with the darks."
            )
        : mode.DarkCurrent is null
            ? Refuse.CannotTell(
                FindingCodes.DarkCurrentMissing,
                "The profile has no dark current, so no dark can be computed: add darks of three exposures at three "
                    + "temperatures, bias frames and flat pairs, and characterise again."
            )
        : Refuse.CannotTell(
            FindingCodes.PredictionNotValidated,
            "This profile does not say whether darks can be computed for this camera: characterise "
                + "it again, laws of single pixels included, on bias frames and darks of two or more exposures at three "
                + "or more temperatures."
        );

    private static bool WithoutBias(CameraProfile profile, ModeProfile mode)
    {
        int place = profile.Modes.TakeWhile(m => !ReferenceEquals(m, mode)).Count();
        FrameSummary[] own = [.. profile.Frames.Session.Where(f => (f.Mode ?? place) == place)];
        return own.Length > 0 && own.All(f => f.Kind != "bias");
    }

    private static DecisionRefusedException Failed(PredictionTest test, string of)
    {
        PredictionFigures? worst = test.FailedBy switch
        {
            "hot" => test.Hot,
            "glow" => test.Glow,
            _ => test.Typical,
        };
        string which = Kind(test.FailedBy);
        PredictionClass? failed = test
            .Classes.Where(c => c.Pixels == test.FailedBy && c.Refused is not null)
            .MaxBy(c => c.Compared);
        string numbers =
            failed is not null
                ? $"only {Plain.Percent(failed.PlainCoverage)} of the {ClassNames.Of(failed)} of left-out darks lay within "
                    + $"the 95 % interval of their noise and law ({ClassNames.Reason(failed)})"
            : worst is null ? "too few pixels could be compared"
            : $"only {Plain.Percent(worst.Coverage)} of the {which} of left-out darks lay within their 95 % "
                + $"interval (they were off by {Plain.Number(worst.Residual.Value)} e⁻, where "
                + $"{Plain.Number(worst.Expected)} e⁻ was expected)";
        return Refuse.CannotTell(
            FindingCodes.PredictionFailed,
            $"Take real darks: on this camera a dark of {of} cannot be computed, because {numbers}. Pixels that change "
                + "from set to set, or a temperature other than the probe reads, cause this."
        );
    }

    private static string Kind(string? failedBy) =>
        failedBy switch
        {
            "hot" => "hot pixels",
            "glow" => "pixels in the glow",
            _ => "ordinary pixels",
        };
}
