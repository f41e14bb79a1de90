using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Exposure;

/// <summary>
/// Which gain setting, and how long a light: long enough to drown the read noise, short enough not to fill the well.
/// </summary>
public static class ExposureAdvice
{
    /// <summary>When no exposure is given: settings that need longer lights than this are not advised, s.</summary>
    internal const double UsualLongest = 300;

    /// <summary>Answers for the given sky, or for three named skies side by side.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="question">Sky, exposure, temperature, limits.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or no mode has read noise and
    /// gain.</exception>
    public static GainChoiceAnswer Find(CameraProfile profile, ExposureQuestion question)
    {
        if (question.ExposureSeconds is double t)
            Refuse.UnlessPositive(t, FindingCodes.ExposureNotPositive, "exposure", "s");
        if (!(question.Fill is > 0 and <= 1))
            throw Refuse.BadArgument(
                FindingCodes.FillOutOfRange,
                $"The part of the well to fill must be above 0 % and at most 100 %, not {Plain.Percent(question.Fill)}."
            );
        CameraProfile asked = question.Settings is null
            ? profile
            : profile with
            {
                Modes = [ModeChoice.Find(profile, question.Settings)],
            };
        GainChoiceAnswer[] answers =
        [
            .. (question.Sky is { } sky ? [sky] : NamedSkies.All).Select(each => Solve(asked, question, each)),
        ];
        return answers[0] with { OtherSkies = answers[1..] };
    }

    private static GainChoiceAnswer Solve(CameraProfile profile, ExposureQuestion question, SkyRate sky)
    {
        double exposure = question.ExposureSeconds ?? UsualLongest;
        GainChoiceAnswer choice = GainChoice.Find(
            profile,
            sky,
            exposure,
            question.Loss,
            question.TemperatureCelsius,
            question.Fill
        );
        GainRow advised = choice.AdvisedRow;
        List<Finding> findings = [.. choice.Findings];
        double longest = advised.LongestExposure?.Value ?? double.PositiveInfinity;
        if (longest < Math.Max(advised.ExposureNeeded.Value, question.ExposureSeconds ?? 0))
            findings.Add(
                new Finding(
                    FindingCodes.WellFills,
                    Severity.Warning,
                    $"Sky and dark current alone fill {Plain.Percent(question.Fill)} of the well"
                        + (advised.FillsHottest ? " of the hottest 0.1 % of the pixels" : "")
                        + $" within {Plain.Duration(longest)}: expose shorter, cool the sensor, or choose a setting with a larger "
                        + "full well."
                )
            );
        if (double.IsInfinity(longest))
            findings.Add(
                new Finding(
                    FindingCodes.FullWellMissing,
                    Severity.Note,
                    "The full well was not measured, so the longest exposure is not known: add flats up to white and "
                        + "characterise again."
                )
            );
        return choice with
        {
            Findings = findings,
            Verdict =
                question.ExposureSeconds is null ? ExposureVerdict.Answered
                : advised.Drowned ? ExposureVerdict.LongEnough
                : ExposureVerdict.TooShort,
        };
    }
}
