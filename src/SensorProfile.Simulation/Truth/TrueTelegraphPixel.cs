using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Truth;

/// <summary>A true random telegraph pixel.</summary>
/// <param name="X">Column, 1-based as FITS counts.</param>
/// <param name="Y">Row, 1-based.</param>
/// <param name="Amplitude">Signal added at read-out in the high state, e-.</param>
/// <param name="Rate">Dark rate added in the high state at the reference temperature, e-/px/s.</param>
/// <param name="DwellHigh">Mean time in the high state, s.</param>
/// <param name="DwellLow">Mean time in the low state, s.</param>
internal sealed record TrueTelegraphPixel(
    int X,
    int Y,
    double Amplitude,
    double Rate,
    double DwellHigh,
    double DwellLow
)
{
    /// <summary>Activation energy of its dark rate, eV; null when it follows the ordinary pixels' law.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? RateEnergy { get; init; }

    /// <summary>Activation energy of its dwell times, eV; null as for the rate.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? DwellEnergy { get; init; }
}
