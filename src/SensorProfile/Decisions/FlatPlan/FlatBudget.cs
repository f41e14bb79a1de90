using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>The quantities that a stack and its flats depend on, each with its uncertainty.</summary>
/// <param name="Sky">Sky, e-/px/s.</param>
/// <param name="Dark">Dark rate of the typical pixel, e-/px/s.</param>
/// <param name="Read">Read noise, e-.</param>
/// <param name="Rounding">(step·gain)²/12, e-².</param>
/// <param name="Residual">Flat-field residual from pixel to pixel, %; null when it was not measured.</param>
/// <param name="Stack">The lights.</param>
internal sealed record FlatBudget(
    Measurement Sky,
    Measurement Dark,
    Measurement Read,
    double Rounding,
    Measurement? Residual,
    StackConditions Stack
)
{
    /// <summary>The noise with the best estimates.</summary>
    internal FlatNoise Best => Noise(() => 0);

    /// <summary>The noise with one draw within the uncertainties, from standard normal deviates.</summary>
    internal FlatNoise Noise(Func<double> deviate)
    {
        // a sky stays above 0
        double t = Stack.ExposureSeconds,
            signal = Sky.Value * Math.Exp(deviate() * Sky.StandardUncertainty / Sky.Value) * t,
            dark = Math.Max(Moved(Dark, deviate()), 0) * t,
            read = Moved(Read, deviate()),
            electronics = read * read + Rounding,
            pattern = Residual is null ? 0 : Math.Max(Moved(Residual, deviate()), 0) / 100;
        return new FlatNoise(signal, signal + dark + electronics, electronics, pattern * pattern, Stack);
    }

    /// <summary>Reads a mode.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">The mode, with one gain.</param>
    /// <param name="question">The stack.</param>
    /// <param name="sky">Its sky.</param>
    /// <param name="findings">Receives what is found on the way.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile has no read noise.</exception>
    internal static FlatBudget Collect(
        CameraProfile profile,
        ModeProfile mode,
        FlatPlanQuestion question,
        SkyRate sky,
        List<Finding> findings
    )
    {
        (Measurement dark, double celsius) = DarkRate(profile, mode, question, sky, findings);
        StackConditions stack = question.At(celsius, sky);
        Guard.Conditions(stack);
        return new FlatBudget(
            sky.Rate,
            dark,
            mode.ReadNoise is { Value: > 0 } read
                ? read
                : throw Refuse.CannotTell(
                    FindingCodes.ReadNoiseMissing,
                    "The profile has no read noise in electrons: add bias frames and flat pairs and characterise again."
                ),
            Math.Pow(Math.Max(profile.Camera.CodeStep, 1) * (mode.Gain?.Value ?? 0), 2) / 12,
            mode.FlatResidual,
            stack
        );
    }

    internal static double Moved(Measurement m, double deviate) => m.Value + deviate * m.StandardUncertainty;

    /// <summary>
    /// Dark rate of the typical pixel; zero where the profile does not know it, which is the strict side.
    /// </summary>
    private static (Measurement Rate, double Celsius) DarkRate(
        CameraProfile profile,
        ModeProfile mode,
        FlatPlanQuestion question,
        SkyRate sky,
        List<Finding> findings
    )
    {
        try
        {
            var reader = SensorReader.Of(profile, mode);
            double celsius = question.TemperatureCelsius ?? reader.Best.PixelReference;
            findings.AddRange([
                .. reader.Notes,
                .. Guard.Exposure(reader, question.ExposureSeconds),
                .. Guard.Temperature(reader, celsius, "temperature of the lights"),
            ]);
            double doubt = UncertaintyDraws
                .Through(reader, sky.Rate, (model, _) => [model.Law.RateAt(celsius)])[0]
                .StandardDeviation;
            double rate = reader.Best.Law.RateAt(celsius);
            return (new Measurement(rate, doubt, "e-/px/s", 1, "law of the typical pixel"), celsius);
        }
        catch (DecisionRefusedException refusal) when (refusal.Kind == RefusalKind.CannotTell)
        {
            findings.Add(
                new Finding(
                    FindingCodes.DarkNoiseNotCounted,
                    Severity.Note,
                    "The noise of the dark current is not counted, which leads to more flats rather than fewer. "
                        + refusal.Message
                )
            );
            return (
                new Measurement(0, 0, "e-/px/s", 1, "not known"),
                question.TemperatureCelsius ?? mode.DarkCurrent?.ReferenceTemperature ?? 0
            );
        }
    }
}
