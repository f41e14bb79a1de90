using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far may my darks be from my lights?</summary>
public sealed record ToleranceQuestion : StackDescription
{
    /// <summary>
    /// Sensor temperature of the lights, °C; null takes the profile's reference temperature, with a finding.
    /// </summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Whether the darks are scaled to the lights by the law of the typical pixel.</summary>
    public bool Scaled { get; init; }
}
