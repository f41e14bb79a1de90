namespace SensorProfile.NoiseModel.Camera;

/// <summary>What a temperature does to the pixels.</summary>
/// <param name="Thermal">Thermal dark current of the typical pixel, in units of its value at the reference
/// temperature.</param>
/// <param name="Floor">Part of every pixel's rate that does not depend on temperature, e-/px/s.</param>
/// <param name="Glow">Mean rate of the glow over the exposure, in units of its value at the reference temperature over
/// the exposure that it was measured with.</param>
internal readonly record struct RateFactors(double Thermal, double Floor, double Glow = 1)
{
    /// <summary>
    /// The same of a pixel with a law of its own that had the typical doubling temperature: its law bends otherwise.
    /// </summary>
    internal double Own { get; init; } = Thermal;
}
