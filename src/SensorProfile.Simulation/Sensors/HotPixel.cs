namespace SensorProfile.Simulation.Sensors;

/// <summary>One hot pixel of an individual sensor.</summary>
/// <param name="Index">Position, row by row from the first row of the file.</param>
/// <param name="Rate">Excess rate at the reference temperature, e-/px/s.</param>
/// <param name="Activation">Activation energy relative to the ordinary pixels'; unused for a pixel with its own defect
/// level.</param>
/// <param name="BornYears">Age of the sensor at which it turned hot, years; 0 if it was hot from the start.</param>
internal readonly record struct HotPixel(int Index, double Rate, double Activation, double BornYears)
{
    /// <summary>Defect level that generates its dark current; null when it follows the ordinary pixels' law.</summary>
    public DefectEnergy? Level { get; init; }
}
