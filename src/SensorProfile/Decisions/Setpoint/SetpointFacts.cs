using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>The facts of a solved set point, with or without a cooler.</summary>
internal static class SetpointFacts
{
    // °C for each °C outside the measured range: of 101 set points 0 to 10 °C below the darks of physical cameras, 68 % were
    // within what the law's own uncertainty claims, 94 % with this (CoverageRun)
    private const double ExtrapolationDoubt = 0.08;

    private const double Coldest = -60,
        Warmest = 30; // darks are not advised beyond these unless the air asks for it, °C

    /// <summary>The facts that both kinds of camera share; the verdict considers the loss alone.</summary>
    internal static SetpointAnswer Collect(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        IReadOnlyList<Finding> findings
    )
    {
        SetpointPoint at = solution.PointOfChoice;
        SetpointLimit? limit = Limit(question, solution);
        AnswerQuantities numbers = Quantities(question, solution, at, reader);
        return new()
        {
            Verdict = limit is null ? SetpointVerdict.Holds : SetpointVerdict.Limited,
            Limit = limit,
            Bound = solution.Choice.Bound,
            At = at,
            LawAsks = solution.Wanted,
            GlowExtra = 100 * solution.GlowExtra,
            ExposureWithinLoss = solution.ExposureWithin(at.Temperature),
            Sky = sky,
            ExposureSeconds = question.ExposureSeconds,
            Loss = question.Loss,
            Share = question.Share,
            SelfHeating = question.SelfHeating,
            MeasuredFrom = reader.Range.Low,
            MeasuredTo = reader.Range.High,
            Quantities = numbers.Quantities,
            Intervals = numbers.Intervals,
            Settling = Darks(reader, question, solution),
            Noise = LightNoise.Compute(reader, sky, question.ExposureSeconds, at.Temperature, question.Share),
            Curve = solution.Curve(),
            Findings = findings,
            RulesOfThumb = [.. RulesOfThumb.OfSetpoint(reader, question.Cooled)],
        };
    }

    /// <summary>What one night's air costs, with the sensor at a temperature.</summary>
    internal static AmbientCost Cost(
        SensorReader reader,
        SetpointQuestion question,
        SetpointSolution solution,
        AmbientTemperature ambient,
        double sensor
    ) =>
        new(
            ambient.Label,
            ambient.Celsius,
            sensor,
            100 * solution.ExtraTypical(sensor),
            100 * solution.ExtraAtShare(sensor),
            Within(question, solution.Extra(sensor)),
            reader.Outside(sensor) > 0.05
        );

    private static bool Within(SetpointQuestion question, double extra) => extra <= question.Loss + 1e-9;

    private static SetpointLimit? Limit(SetpointQuestion question, SetpointSolution solution) =>
        Within(question, solution.Extra(solution.Choice.Celsius)) ? null
        : !Within(question, solution.GlowExtra) ? SetpointLimit.Glow
        : solution.Choice.Bound == SetpointBound.Cooler ? SetpointLimit.Cooler
        : SetpointLimit.Range;

    /// <summary>
    /// Darks at the temperature that the law calls for, as far as air and cooler allow it, where the measured range
    /// ends first.
    /// </summary>
    private static IReadOnlyList<SettlingFrames> Darks(
        SensorReader reader,
        SetpointQuestion question,
        SetpointSolution solution
    )
    {
        bool glow = !Within(question, solution.GlowExtra);
        double? air = question is { Cooled: true, Ambient.Count: > 0 } ? question.Ambient.Max(a => a.Celsius) : null;
        double asked = Math.Clamp(Math.Floor(solution.Wanted ?? Coldest), Coldest, Math.Max(Warmest, air ?? Warmest));
        if (air is double night)
            asked = Math.Max(Math.Min(asked, Math.Floor(night)), question.ColdestHeld(night) ?? Coldest);
        bool needed = solution.Choice switch
        {
            { Told: false } => true,
            { Bound: SetpointBound.Loss } => false,
            { Bound: SetpointBound.ColdestMeasured or SetpointBound.WarmestMeasured } => !glow,
            { Celsius: var celsius } => reader.Outside(celsius) > 0.05,
        };
        return needed && reader.Outside(asked) > 0.5
            ? SettlingFrames.NewTemperature(question.ExposureSeconds, asked)
            : [];
    }

    private static AnswerQuantities Quantities(
        SetpointQuestion question,
        SetpointSolution solution,
        SetpointPoint at,
        SensorReader reader
    )
    {
        var list = new AnswerQuantities();
        string share = $"{Plain.Percent(question.Share)} of the pixels";
        string method =
            $"noise of a light raised by {Plain.Percent(question.Loss)}, {reader.Mode.DarkCurrent!.Selected} law, "
            + "uncertainties drawn";
        double? Covered(double? value) =>
            value is double v && reader.Outside(v) <= Refuse.ExtrapolationCelsius ? value : null;
        UncertaintyDraws.Spread Beyond(double? value, UncertaintyDraws.Spread drawn) =>
            value is double v && reader.Outside(v) > 0 ? drawn.With(v, ExtrapolationDoubt * reader.Outside(v)) : drawn;
        list.Add(
            QuantityNames.Setpoint,
            solution.Choice.Told ? at.Temperature : null,
            "°C",
            method + "; whole degrees, measured, within air and cooler",
            solution.Choice.Bound == SetpointBound.Loss
                ? new UncertaintyDraws.Spread(
                    Beyond(solution.Wanted, solution.WantedSpread).StandardDeviation,
                    null,
                    null,
                    0
                )
                : default
        );
        list.Add(
            QuantityNames.SetpointTypical,
            Covered(solution.Typical),
            "°C",
            method,
            Beyond(solution.Typical, solution.TypicalSpread)
        );
        list.Add(
            QuantityNames.Setpoint99,
            Covered(solution.AtShare),
            "°C",
            $"{method}; {share}",
            Beyond(solution.AtShare, solution.ShareSpread)
        );
        list.Add(
            QuantityNames.DiminishingReturns,
            Covered(solution.Diminishing),
            "°C",
            "any colder temperature gains less than 1 %",
            Beyond(solution.Diminishing, solution.DiminishingSpread)
        );
        list.Add(QuantityNames.ExtraTypical, at.ExtraTypical, "%", "noise added there");
        list.Add(QuantityNames.Extra99, at.ExtraAtShare, "%", $"noise added there; {share}");
        return list;
    }
}
