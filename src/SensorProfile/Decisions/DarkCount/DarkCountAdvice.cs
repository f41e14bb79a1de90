using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.DarkCount;

/// <summary>The number of darks for a stack, from the noise of one dark against the noise of the stack.</summary>
internal static class DarkCountAdvice
{
    private const int UsualDarks = 20; // common practice, no source

    private static readonly int[] counts =
    [
        1,
        2,
        3,
        5,
        7,
        10,
        15,
        20,
        30,
        40,
        50,
        70,
        100,
        150,
        200,
        300,
        500,
        700,
        1000,
        1500,
        2000,
    ];

    /// <summary>The smallest number of darks that stays within the loss.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">The stack.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static DarkCountAnswer Find(CameraProfile profile, ModeProfile mode, DarkCountQuestion question) =>
        StrictestColour.Ask(
            mode,
            colour => Solve(profile, colour, question),
            answer => -answer.Darks,
            QuantityNames.Darks
        );

    private static DarkCountAnswer Solve(CameraProfile profile, ModeProfile mode, DarkCountQuestion question)
    {
        Refuse.UnlessShare(question.Limits.NoiseLoss, FindingCodes.LossOutOfRange, "accepted loss");
        SkyRate sky = NamedSkies.OrDefault(question.Sky);
        StackConditions stack = question.At(question.TemperatureCelsius, sky);
        Guard.Conditions(stack);
        var reader = SensorReader.Of(profile, mode);
        List<Finding> findings =
        [
            .. reader.Notes,
            .. Guard.Exposure(reader, stack.ExposureSeconds),
            .. Guard.Temperature(reader, stack.TemperatureCelsius, "temperature of the darks"),
        ];
        if (FullPixels.White(reader, sky, stack.ExposureSeconds, stack.TemperatureCelsius) is { } white)
            throw white;
        if (question.Sky is null)
            findings.Add(SkyAssumed(sky));
        double ratio = Ratio(reader.Best, sky.Rate.Value, stack.ExposureSeconds, stack.TemperatureCelsius);
        double lights = (double)stack.Lights / stack.DitherPositions,
            n = MinDarks.InMaster(ratio, lights, question.Limits.NoiseLoss);
        UncertaintyDraws.Spread[] spreads = UncertaintyDraws.Through(reader, sky.Rate, (model, s) =>
        {
            double drawn = Ratio(model, s, stack.ExposureSeconds, stack.TemperatureCelsius);
            return
            [
                MinDarks.InMaster(drawn, lights, question.Limits.NoiseLoss),
                100 * MinDarks.Loss(drawn, lights, UsualDarks),
            ];
        });
        var quantities = new AnswerQuantities();
        quantities.Add(
            QuantityNames.Darks,
            n,
            "frames",
            "smallest number within the loss, uncertainties drawn",
            spreads[0]
        );
        quantities.Add(
            QuantityNames.LossAt20,
            100 * MinDarks.Loss(ratio, lights, UsualDarks),
            "%",
            "rise of the noise of the stack with 20 darks, uncertainties drawn",
            spreads[1]
        );
        return new DarkCountAnswer
        {
            Stack = stack,
            Sky = sky,
            Loss = question.Limits.NoiseLoss,
            Darks = (int)n,
            FewestForHits = MinDarks.Smallest(ratio, lights, question.Limits.NoiseLoss) < n,
            NoiseRatio = Math.Sqrt(ratio),
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Findings = findings,
            RulesOfThumb = [RulesOfThumb.TwentyDarks(ratio, lights, question.Limits.NoiseLoss)],
            Curve = [.. counts.Select(c => new DarkCountPoint(c, 100 * MinDarks.Loss(ratio, lights, c)))],
        };
    }

    /// <summary>
    /// N_d²/N² of the typical pixel: one dark against one light of the same exposure and temperature.
    /// </summary>
    internal static double Ratio(SensorModel sensor, double sky, double exposureSeconds, double celsius)
    {
        double dark = sensor.Law.RateAt(celsius) * exposureSeconds;
        return PixelNoise.OfLight(sensor, 0, dark).Random
            / PixelNoise.OfLight(sensor, sky * exposureSeconds, dark).Random;
    }

    internal static Finding SkyAssumed(SkyRate sky) =>
        new(
            FindingCodes.SkyAssumed,
            Severity.Note,
            $"No sky was given; a {sky.Name} ({Plain.Number(sky.Rate.Value, 2)} e⁻/px/s) is assumed."
        );
}
