using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkCount;

/// <summary>How many darks does this stack need?</summary>
internal sealed record DarkCountQuestion : StackDescription
{
    /// <summary>Sensor temperature, °C.</summary>
    public required double TemperatureCelsius { get; init; }
}
