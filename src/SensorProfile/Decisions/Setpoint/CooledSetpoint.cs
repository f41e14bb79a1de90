using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>
/// The set point of a cooler: never warmer than the air, never colder than it can hold on the warmest of the nights,
/// and a measured temperature wherever these two allow it.
/// </summary>
internal static class CooledSetpoint
{
    // advice with a wider interval than this is none, °C; without laws of single pixels it soon comes out too warm
    private const double WidestAdvice = 10,
        WidestWithoutLaws = 4;

    internal static SetpointAnswer Answer(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        List<Finding> findings
    )
    {
        SetpointChoice choice = solution.Choice;
        findings.AddRange(Guard.Temperature(reader, choice.Celsius, "set point"));
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, question.ExposureSeconds, choice.Celsius));
        findings.AddRange(FlickerRanks.Findings(reader, sky.Rate.Value, question.ExposureSeconds, choice.Celsius));
        SetpointAnswer facts = SetpointFacts.Collect(reader, question, sky, solution, findings);
        Interval? uncertain =
            solution.ChoiceSpread is { } ends
            && ends.High.Celsius - ends.Low.Celsius > (reader.LawsMeasured ? WidestAdvice : WidestWithoutLaws)
                ? new Interval(ends.Low.Celsius, ends.High.Celsius)
                : null;
        double? air = question.Ambient.Count > 0 ? question.Ambient.Max(night => night.Celsius) : null;
        return facts with
        {
            Verdict = uncertain is not null || !choice.Told ? SetpointVerdict.CannotTell : facts.Verdict,
            Uncertain = uncertain,
            WarmestAir = air,
            ColdestHeld = air is double warmest ? question.ColdestHeld(warmest) : null,
            Margin = question.Margin,
            Ambient =
            [
                .. question.Ambient.Select(night =>
                    SetpointFacts.Cost(reader, question, solution, night, Sensor(question, solution, night))
                ),
            ],
            Nights = NightsSummary.Cooled(
                question,
                solution,
                Math.Min(solution.Measured.Celsius, choice.Celsius),
                choice.Celsius
            ),
        };
    }

    /// <summary>The temperature wanted, as far as this night's air allows it.</summary>
    private static double Sensor(SetpointQuestion question, SetpointSolution solution, AmbientTemperature night)
    {
        double cooled = Math.Min(solution.Measured.Celsius, night.Celsius);
        return question.ColdestHeld(night.Celsius) is double held ? Math.Max(cooled, held) : cooled;
    }
}
