using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>What trials on left-out darks mean, in words; used by the answer and by the report.</summary>
internal static class PredictionWords
{
    /// <summary>"ordinary pixels", "hot pixels", "pixels in the glow".</summary>
    internal static string Kind(string? name) =>
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
        ArgumentNullException.ThrowIfNull(trials);
        if (trials.ByExposure is null && trials.ByTemperature is null && trials.Beyond is null)
            return "It could not be tried whether a dark can be computed: there were too few sets of darks.";
        if (!trials.Passed)
        {
            PredictionTest failed = trials.ByExposure is { Passed: false } exposure
                ? exposure
                : trials.ByTemperature ?? trials.Beyond!;
            return $"No dark can be computed for this camera: {Kind(failed.FailedBy)} of darks that were left out did "
                + "not come out within their uncertainty. Take real darks.";
        }
        string where = trials.ByTemperature is { Passed: true }
            ? "at any temperature and exposure within the measured range"
            : "of another exposure at a measured temperature";
        return $"A dark can be computed {where}: darks that were left out came out within their uncertainty "
            + $"({Said.Percent(trials.Coverage)} of the pixels within 95 % intervals).";
    }

    /// <summary>One sentence on whether plain scaling of a dark works on this camera.</summary>
    /// <param name="trials">The record of the profile.</param>
    public static string Scaling(DarkPredictionProfile trials)
    {
        ArgumentNullException.ThrowIfNull(trials);
        string exposure = One("Scaling a dark by exposure", trials.ScalingByExposure),
            temperature = One("scaling by temperature", trials.ScalingByTemperature);
        return $"{exposure}; {temperature}.";
    }

    private static string One(string what, PredictionTest? test)
    {
        if (test is null)
            return $"{what} could not be tried";
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
                + $"{Said.Number(worst.Residual.Value, 2)} e⁻, where noise explains {Said.Number(worst.Expected, 2)} "
                + "e⁻)";
    }
}
