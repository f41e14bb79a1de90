namespace SensorProfile.NoiseModel.Camera;

/// <summary>Effect of a temperature on the dark rates of the pixels.</summary>
/// <param name="Thermal">Thermal dark current of the typical pixel, in units of its value at the reference
/// temperature.</param>
/// <param name="Floor">Part of every pixel's rate that does not depend on temperature, e-/px/s.</param>
/// <param name="Glow">Mean rate of the glow over the exposure, in units of its value at the reference temperature over
/// the exposure that it was measured with.</param>
internal readonly record struct RateFactors(double Thermal, double Floor, double Glow = 1)
{
    /// <summary>
    /// The thermal factor of a pixel with a law of its own, if it had the typical doubling temperature: such laws bend
    /// differently.
    /// </summary>
    internal double Own { get; init; } = Thermal;
}
