using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Truth;

/// <summary>A true hot pixel.</summary>
/// <param name="X">Column, 1-based as FITS counts.</param>
/// <param name="Y">Row, 1-based.</param>
/// <param name="Rate">Excess over the ordinary rate at the reference temperature of the die, e-/px/s.</param>
/// <param name="Doubling">Temperature rise that doubles the excess at the reference temperature, °C.</param>
/// <param name="BornYears">Age of the sensor at which it turned hot, years; 0 if it was hot from the start.</param>
internal sealed record TrueHotPixel(int X, int Y, double Rate, double Doubling, double BornYears)
{
    /// <summary>Activation energy of its generation, eV; null when it follows the ordinary pixels' law.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Energy { get; init; }

    /// <summary>Share of diffusion in its rate at the reference temperature; null as for the energy.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? DiffusionShare { get; init; }
}
