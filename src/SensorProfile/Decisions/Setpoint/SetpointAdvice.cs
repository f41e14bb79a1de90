using MathNet.Numerics.RootFinding;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>
/// The warmest temperature at which dark current raises the noise of a light by no more than an accepted loss.
/// </summary>
/// <remarks>
/// Extra noise at T: √((S·t + I(T)·t + R² + q²)/(S·t + R² + q²)) − 1, for the typical pixel and for the pixel that a
/// stated share of the pixels do not exceed.
/// It stays within p as long as I(T) ≤ ((1+p)² − 1)·(S·t + R² + q²)/t.
/// </remarks>
public static class SetpointAdvice
{
    internal const double Coldest = -120,
        Warmest = 90; // where a solution is looked for, °C
    private const double DiminishingGain = 0.01; // "colder gains less than 1 %"
    private const double NearCelsius = 2,
        Exact = 1e-3; // °C

    /// <summary>Answers for the given sky, or for three named skies side by side.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">Exposure, sky, cooler.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static SetpointAnswer Find(CameraProfile profile, ModeProfile mode, SetpointQuestion question)
    {
        Check(question);
        var reader = SensorReader.Of(profile, mode);
        (SetpointQuestion reached, IReadOnlyList<AmbientTemperature> beyond) = NightsBeyond.Split(reader, question);
        SetpointAnswer[] answers =
        [
            .. FullPixels
                .Skies(reader, reached.Sky, reached.ExposureSeconds)
                .Select(each =>
                    StrictestColour.Ask(
                        mode,
                        colour => Solve(SensorReader.Of(profile, colour), reached, each, beyond),
                        answer =>
                            (answer.At.Temperature, -Math.Max(answer.At.ExtraTypical, answer.At.ExtraAtShare ?? 0)),
                        QuantityNames.Setpoint
                    )
                ),
        ];
        return answers[0] with
        {
            OtherSkies = answers[1..],
            Findings = [.. answers[0].Findings, .. FullPixels.LeftOut(reader, reached.Sky, reached.ExposureSeconds)],
        };
    }

    /// <summary>
    /// Dark rate that raises the noise of one light by exactly p: ((1+p)² − 1)·(S·t + N²)/t, e-/px/s.
    /// </summary>
    /// <param name="loss">p.</param>
    /// <param name="sky">S, e-/px/s.</param>
    /// <param name="exposureSeconds">t.</param>
    /// <param name="readVariance">R² + q², e-².</param>
    internal static double Allowance(double loss, double sky, double exposureSeconds, double readVariance) =>
        ((1 + loss) * (1 + loss) - 1) * (sky * exposureSeconds + readVariance) / exposureSeconds;

    /// <summary>Noise that a dark rate adds to a light, as a share.</summary>
    internal static double Extra(SensorModel sensor, double sky, double exposureSeconds, double darkRate)
    {
        double electrons = sky * exposureSeconds;
        return Math.Sqrt(
                PixelNoise.OfLight(sensor, electrons, Math.Max(darkRate, 0) * exposureSeconds).Random
                    / PixelNoise.OfLight(sensor, electrons, 0).Random
            ) - 1;
    }

    /// <summary>
    /// Warmest temperature at which a growing rate stays within an allowance, to a thousandth of a degree or better; null
    /// when it never does.
    /// </summary>
    /// <param name="rateAt">The rate.</param>
    /// <param name="allowance">The allowance.</param>
    /// <param name="near">Where the answer is expected; null when unknown.</param>
    internal static double? WarmestWithin(Func<double, double> rateAt, double allowance, double? near = null)
    {
        // rates grow exponentially: their logarithm has a root that is found in a few steps
        double Over(double celsius) => Math.Log(Math.Max(rateAt(celsius), double.Epsilon) / allowance);
        if (
            near is double expected
            && Brent.TryFindRoot(Over, expected - NearCelsius, expected + NearCelsius, Exact, 50, out double root)
        )
            return root;
        if (rateAt(Coldest) > allowance)
            return null;
        if (rateAt(Warmest) <= allowance)
            return Warmest;
        double low = Coldest,
            high = Warmest;
        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            if (rateAt(middle) > allowance)
                high = middle;
            else
                low = middle;
        }
        return low;
    }

    private static void Check(SetpointQuestion question)
    {
        Refuse.UnlessPositive(question.ExposureSeconds, FindingCodes.ExposureNotPositive, "exposure", "s");
        Refuse.UnlessShare(question.Loss, FindingCodes.LossOutOfRange, "accepted loss");
        Refuse.UnlessShare(question.Share, FindingCodes.ShareOutOfRange, "share of the pixels");
        if (question.Sky is { } sky)
            Guard.Sky(sky.Rate);
        if (question.MaximumDifference is double difference)
            Refuse.UnlessPositive(
                difference,
                FindingCodes.DifferenceNotPositive,
                "largest difference of the cooler",
                "°C"
            );
        if (!(question.Margin >= 0))
            throw Refuse.BadArgument(
                FindingCodes.MarginNegative,
                $"The margin of the cooler cannot be {Plain.Number(question.Margin)} °C: give 0 or more."
            );
        if (question is { Cooled: true, MaximumDifference: double reach } && !(reach > question.Margin))
            throw Refuse.CoolerTooWeak(reach, question.Margin);
        if (!(question.SelfHeating >= 0) || double.IsInfinity(question.SelfHeating))
            throw Refuse.BadArgument(
                FindingCodes.SelfHeatingNegative,
                $"The self-heating of the sensor cannot be {Plain.Number(question.SelfHeating)} °C: give 0 or more."
            );
        foreach (AmbientTemperature ambient in question.Ambient)
            if (!(ambient.Celsius is >= -90 and <= 60))
                throw Refuse.BadArgument(
                    FindingCodes.AmbientOutOfRange,
                    $"An ambient temperature of {Plain.Number(ambient.Celsius)} °C is not between −90 °C and 60 °C."
                );
    }

    private static SetpointAnswer Solve(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        IReadOnlyList<AmbientTemperature> beyond
    )
    {
        List<Finding> findings = [.. reader.Notes, .. Guard.Exposure(reader, question.ExposureSeconds)];
        if (reader.Best.Rates is null)
            findings.Add(MissingInputs.Distribution("only the typical pixel is answered"));
        var solution = SetpointSolution.Solve(reader, question, sky);
        SetpointAnswer answer = question.Cooled
            ? CooledSetpoint.Answer(reader, question, sky, solution, findings)
            : UncooledSetpoint.Answer(reader, question, sky, solution, findings);
        return beyond.Count == 0
            ? answer
            : answer with
            {
                Verdict = SetpointVerdict.CannotTell,
                NightsBeyond = beyond,
                Settling = NightsBeyond.Darks(reader, question, beyond),
            };
    }

    internal static double DiminishingShare => DiminishingGain;
}
