using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Sky;

/// <summary>A sky background in e-/px/s and its origin.</summary>
/// <param name="Name">For example "your sky", "dark sky, broad band".</param>
/// <param name="Rate">e-/px/s.</param>
/// <param name="Assumptions">What was assumed, one line each; empty for a number that was given.</param>
public sealed record SkyRate(string Name, Measurement Rate, IReadOnlyList<string> Assumptions)
{
    /// <summary>A rate the user gave.</summary>
    /// <param name="electronsPerPixelSecond">e-/px/s, above 0.</param>
    /// <param name="standardUncertainty">One standard uncertainty; 0 when the number is to be taken as exact.</param>
    /// <exception cref="DecisionRefusedException">The rate is not above 0.</exception>
    public static SkyRate Given(double electronsPerPixelSecond, double standardUncertainty = 0)
    {
        var rate = new Measurement(electronsPerPixelSecond, standardUncertainty, "e-/px/s", 1, "given");
        Guard.Sky(rate);
        return new SkyRate("your sky", rate, []);
    }

    /// <summary>From the background of the user's own lights: S = g·B/t, e-/px/s.</summary>
    /// <param name="background">Background above the matching dark (or above pedestal and dark signal), ADU, stars
    /// masked.</param>
    /// <param name="gain">Conversion gain, e-/ADU.</param>
    /// <param name="exposureSeconds">Exposure of the lights, s.</param>
    /// <exception cref="DecisionRefusedException">Background, gain or exposure are not above 0, or the background is
    /// not above its own noise.</exception>
    internal static SkyRate FromBackground(Measurement background, Measurement gain, double exposureSeconds)
    {
        Refuse.UnlessPositive(exposureSeconds, FindingCodes.ExposureNotPositive, "exposure of the lights", "s");
        Refuse.UnlessPositive(gain.Value, FindingCodes.GainNotPositive, "gain", "e⁻/ADU");
        if (background.Value <= 2 * background.StandardUncertainty || background.Value <= 0)
            throw Refuse.CannotTell(
                FindingCodes.SkyNotSeen,
                $"The background of the lights is {Plain.Number(background.Value)} ± "
                    + $"{Plain.Number(background.StandardUncertainty, 2)} ADU above the dark, which is not above "
                    + "zero: use darks that match the lights, or give the sky as a number."
            );
        double rate = background.Value * gain.Value / exposureSeconds;
        double relative = Math.Sqrt(
            Square(background.StandardUncertainty / background.Value) + Square(gain.StandardUncertainty / gain.Value)
        );
        return new SkyRate(
            "your sky, from your lights",
            new Measurement(
                rate,
                rate * relative,
                "e-/px/s",
                background.Samples,
                "background of the lights above the dark, by the gain"
            ),
            []
        );
    }

    private static double Square(double x) => x * x;
}
