using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Exposure;

/// <summary>
/// How long a light, at which gain setting: long enough to drown the read noise, short enough not to fill the well.
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
            Refuse.UnlessPositive(t, "exposure-not-positive", "exposure", "s");
        if (!(question.Fill is > 0 and <= 1))
            throw Refuse.BadArgument(
                "fill-out-of-range",
                $"The part of the well to fill must lie above 0 % and at most at 100 %, not at {Said.Percent(question.Fill)}."
            );
        CameraProfile asked = question.Settings is null
            ? profile
            : profile with
            {
                Modes = [ModeChoice.Find(profile, question.Settings)],
            };
        if (question.Sky is { } sky)
            return Solve(asked, question, sky);
        GainChoiceAnswer[] answers = [.. NamedSkies.All.Select(named => Solve(asked, question, named))];
        return answers[0] with
        {
            Sentence =
                "Expose at least "
                + $"{string.Join("; ", answers.Select(a => $"{Shortest(a)}{(a.Modes.Count > 1 ? $" at {ModeChoice.Name(a.Advised)}" : "")} under a {a.Sky.Name}"))} "
                + ""
                + ""
                + ""
                + ""
                + "(your own sky: --sky).",
            OtherSkies = answers[1..],
        };
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
        GainRow advised = choice.Modes.First(row => row.Settings == choice.Advised);
        List<Finding> findings = [.. choice.Findings];
        double longest = advised.LongestExposure?.Value ?? double.PositiveInfinity;
        if (longest < Math.Max(advised.ExposureNeeded.Value, question.ExposureSeconds ?? 0))
            findings.Add(
                new Finding(
                    "well-fills",
                    Severity.Warning,
                    $"Sky and dark current alone fill {Said.Percent(question.Fill)} of the well within "
                        + $"{Said.Seconds(longest)}: expose shorter, cool the sensor, or choose a setting with a larger "
                        + "full well."
                )
            );
        if (double.IsInfinity(longest))
            findings.Add(
                new Finding(
                    "full-well-missing",
                    Severity.Note,
                    "The full well was not measured, so the longest exposure is not known: add flats up to white and "
                        + "characterise again."
                )
            );
        string use = choice.Modes.Count > 1 ? $"Use {ModeChoice.Name(advised.Settings)} and expose" : "Expose";
        string noise = Said.Percent(question.Loss);
        return choice with
        {
            Sentence =
                question.ExposureSeconds is not double t
                    ? $"{use} at least {Shortest(choice)}: from there on read noise adds no more than {noise} to the noise of a light."
                : advised.Drowned
                    ? $"{use} {Said.Seconds(t)}: long enough, read noise adds {Said.Percent(advised.ReadNoiseShare)} "
                        + $"to the noise of a light; {Shortest(choice)} would do."
                : $"{use} longer than {Said.Seconds(t)}, at least {Shortest(choice)}: at {Said.Seconds(t)} read "
                    + $"noise adds {Said.Percent(advised.ReadNoiseShare)} to the noise of a light, more than "
                    + $"{noise}.",
            Reason =
                (choice.Modes.Count > 1 ? choice.Reason + " " : "")
                + $"Read noise of {QuantityText.Of(advised.ReadNoise)} stands against {Said.Rate(sky.Rate.Value)} of sky"
                + (
                    double.IsInfinity(longest)
                        ? "."
                        : $"; sky and dark current fill {Said.Percent(question.Fill)} of the well after "
                            + $"{Said.Duration(longest)}, bright stars much sooner."
                ),
            Findings = findings,
        };
    }

    private static string Shortest(GainChoiceAnswer answer) =>
        Said.Seconds(SubExposure.Up(answer.Quantities["shortestExposure"]!.Value));
}
