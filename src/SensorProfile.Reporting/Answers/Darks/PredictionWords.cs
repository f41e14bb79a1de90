using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>What trials on left-out darks mean, in words; used by the answer and by the report.</summary>
internal static class PredictionWords
{
    public static AnswerWords Phrase(DarkPredictionAnswer answer) =>
        new(
            answer.Verdict == PredictionVerdict.CannotTell ? Contradicted(answer) : Use(answer),
            Reason(answer.Test, answer.Proof),
            answer.Verdict
        );

    /// <summary>"ordinary pixels", "hot pixels", "pixels in the glow".</summary>
    private static string Kind(string? name) =>
        name switch
        {
            "hot" => "hot pixels",
            "glow" => "pixels in the glow",
            _ => "ordinary pixels",
        };

    /// <summary>One sentence on whether a dark can be computed for this camera.</summary>
    /// <param name="trials">The record of the profile.</param>
    public static string Verdict(DarkPredictionProfile trials)
    {
        if (trials.ByExposure is null && trials.ByTemperature is null && trials.Beyond is null)
            return "Whether a dark can be computed could not be tested: there were too few sets of darks.";
        if (!trials.Passed)
        {
            PredictionTest failed = trials.ByExposure is { Passed: false } exposure
                ? exposure
                : trials.ByTemperature ?? trials.Beyond!;
            return $"No dark can be computed for this camera: {Kind(failed.FailedBy)} of darks left out for testing did "
                + "not agree with the computed ones within the uncertainty. Take real darks.";
        }
        string where = trials.ByTemperature is { Passed: true }
            ? "at any temperature and exposure within the measured range"
            : "of another exposure at a measured temperature";
        return $"A dark can be computed {where}: darks left out for testing agreed with the computed ones within the uncertainty "
            + $"({Plain.Percent(trials.Coverage)} of the pixels within 95 % intervals).";
    }

    /// <summary>One sentence on the classes of pixels for which nothing is claimed; empty where there are none.</summary>
    /// <param name="trials">The record of the profile.</param>
    public static string Refused(DarkPredictionProfile trials)
    {
        PredictionClass[] refused =
        [
            .. new[] { trials.ByExposure, trials.ByTemperature }
                .OfType<PredictionTest>()
                .SelectMany(t => t.Classes)
                .Where(c => c.Refused is not null)
                .DistinctBy(ClassNames.Of),
        ];
        return refused.Length == 0
            ? ""
            : "Nothing is claimed for "
                + $"{string.Join("; for ", refused.Select(c => $"{ClassNames.Of(c)} ({ClassNames.Reason(c)})"))}.";
    }

    /// <summary>One sentence on whether plain scaling of a dark works on this camera.</summary>
    /// <param name="trials">The record of the profile.</param>
    public static string Scaling(DarkPredictionProfile trials)
    {
        string exposure = One("Scaling a dark by exposure", trials.ScalingByExposure),
            temperature = One("scaling by temperature", trials.ScalingByTemperature);
        return $"{exposure}; {temperature}.";
    }

    /// <summary>What is claimed for a class: "yes", "yes, with uncertainty × 1.3 and 2 % of the signal", "no: …".</summary>
    public static string Claim(PredictionClass known)
    {
        if (known.Refused is not null)
            return $"no: {ClassNames.Reason(known)}";
        string factor = known.VarianceFactor > 1.01
                ? $"uncertainty × {Plain.Number(Math.Sqrt(known.VarianceFactor), 2)}"
                : "",
            common = known.CommonShare > 0.0005 ? $"{Plain.Number(100 * known.CommonShare, 2)} % of the signal" : "";
        string widened = string.Join(" and ", new[] { factor, common }.Where(t => t.Length > 0));
        return widened.Length == 0 ? "yes" : $"yes, with {widened}";
    }

    private static string One(string what, PredictionTest? test)
    {
        if (test is null)
            return $"{what} could not be tested";
        if (test.Passed)
            return $"{what} works on this camera";
        PredictionFigures? worst = test.FailedBy switch
        {
            "hot" => test.Hot,
            "glow" => test.Glow,
            _ => test.Typical,
        };
        return worst is null
            ? $"{what} could not be judged"
            : $"{what} does not work on this camera ({Kind(test.FailedBy)} are off by "
                + $"{Plain.Number(worst.Residual.Value, 2)} e⁻, where noise explains {Plain.Number(worst.Expected, 2)} "
                + "e⁻)";
    }

    private static string Contradicted(DarkPredictionAnswer answer) =>
        "Take real darks: the computed one does not agree with the fresh darks (only "
        + $"{Plain.Percent(answer.Quantities[QuantityNames.CoverageAgainst]!.Value / 100)} of the pixels lie within their 95 % "
        + "interval). The camera has changed: characterise again.";

    private static string Use(DarkPredictionAnswer answer)
    {
        string quality = answer.Quantities[QuantityNames.EquivalentFrames] is { Value: >= 1.5 } frames
            ? $"in ordinary pixels as good as a master of {Plain.Whole((long)Math.Round(frames.Value))} frames"
            : $"known to ±{Plain.Number(answer.Quantities[QuantityNames.UncertaintyTypical]!.Value, 2)} e⁻ in ordinary pixels";
        return $"Use the computed master dark for lights of {Plain.Seconds(answer.ExposureSeconds)} at "
            + $"{Plain.Celsius(answer.TemperatureCelsius)}: {quality}{Unclaimed(answer)}.";
    }

    /// <summary>"; nothing is claimed for 12 flickering pixels".</summary>
    private static string Unclaimed(DarkPredictionAnswer answer)
    {
        if (answer.Refused.Count == 0)
            return "";
        string all = string.Join(
            " and ",
            answer.Refused.Select(r => $"{Plain.Whole(r.Pixels)} {ClassNames.Of(r.Class)}")
        );
        return $"; nothing is claimed for {all}";
    }

    private static string Reason(PredictionTest test, PredictionProof proof)
    {
        string left = proof switch
        {
            PredictionProof.Exposure => "sets of darks were left out one by one",
            PredictionProof.Temperature => "all darks of a temperature were left out in turn",
            _ => "the coldest and the warmest darks were left out",
        };
        string[] shares =
        [
            .. new[] { (test.Typical, "ordinary pixels"), (test.Hot, "hot pixels"), (test.Glow, "pixels in the glow") }
                .Where(s => s.Item1 is not null)
                .Select(s => $"{Plain.Percent(s.Item1!.Coverage)} of the {s.Item2}"),
        ];
        string all = shares.Length > 1 ? $"{string.Join(", ", shares[..^1])} and {shares[^1]}" : string.Concat(shares);
        return $"As a test, {left} and computed from the rest: {all} lay within their 95 % interval.";
    }
}
