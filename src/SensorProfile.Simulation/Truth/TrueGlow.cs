using System.Text.Json.Serialization;
using SensorProfile.Simulation.Parameters;
using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Truth;

/// <summary>A true glow.</summary>
internal sealed record TrueGlow
{
    /// <summary>Shape of the glow.</summary>
    [JsonConverter(typeof(KebabEnumConverter<GlowShape>))]
    public required GlowShape Shape { get; init; }

    /// <summary>Column of the brightest pixel, 1-based.</summary>
    public required int X { get; init; }

    /// <summary>Row of the brightest pixel, 1-based.</summary>
    public required int Y { get; init; }

    /// <summary>Rate there at the reference temperature, e-/px/s.</summary>
    public required double Peak { get; init; }

    /// <summary>Sum over the sensor at the reference temperature, e-/s.</summary>
    public required double Total { get; init; }

    /// <summary>Exponent p of glow ∝ exposure^p.</summary>
    public required double ExposureExponent { get; init; }

    /// <summary>Temperature rise that doubles it, °C; null when the glow does not depend on temperature.</summary>
    public required double? DoublingTemperature { get; init; }

    /// <summary>Activation energy, eV; null when the glow has none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? ActivationEnergy { get; init; }

    /// <summary>Relative rise as its source warms up; null when there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? WarmUp { get; init; }
}
