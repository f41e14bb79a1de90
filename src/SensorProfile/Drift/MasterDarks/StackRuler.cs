using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The noise of the stack against which residuals are judged, in ADU.</summary>
/// <param name="Gain">e-/ADU; null when unknown.</param>
/// <param name="Options">Lights, sky, limits.</param>
internal sealed record StackRuler(Measurement? Gain, DarkLibraryOptions Options)
{
    /// <summary>
    /// Whether the gain is only a rough one from the fresh darks: good for the noise of the sky, not for telling
    /// electrons from ADU.
    /// </summary>
    public bool GainIsRough { get; init; }

    /// <summary>e- or ADU.</summary>
    public string Unit => Gain is null ? "ADU" : "e-";

    /// <summary>From ADU to <see cref="Unit"/>.</summary>
    public double PerAdu => Gain?.Value ?? 1;

    /// <summary>
    /// Variance of one light: dark and read noise as measured in the fresh darks, and the sky, ADU²; a rough gain
    /// counts with its upper end, the strict side.
    /// </summary>
    public double LightVariance(double darkVariance, double? exposureSeconds) =>
        darkVariance
        + (
            Gain is { Value: > 0 } k && exposureSeconds is double t
                ? (Options.Sky ?? NamedSkies.Dark).Rate.Value
                    * t
                    / Square(k.Value + (GainIsRough ? k.StandardUncertainty : 0))
                : 0
        );

    /// <summary>Standard deviation of the stack, ADU.</summary>
    public double StackNoise(double darkVariance, double? exposureSeconds) =>
        Math.Sqrt(LightVariance(darkVariance, exposureSeconds) / Options.Lights);

    /// <summary>A quantity in ADU as the user reads it.</summary>
    public Measurement Measured(double adu, double uncertainty, long samples, string method) =>
        new(adu * PerAdu, uncertainty * PerAdu, Unit, samples, method);

    private static double Square(double x) => x * x;
}
