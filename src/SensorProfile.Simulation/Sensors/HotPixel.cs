namespace SensorProfile.Simulation.Sensors;

/// <summary>One hot pixel of an individual sensor.</summary>
/// <param name="Index">Position, row by row from the first of the file.</param>
/// <param name="Rate">Excess rate at the reference temperature, e-/px/s.</param>
/// <param name="Activation">Activation energy relative to the ordinary pixels'; unused where it has a level of its
/// own.</param>
/// <param name="BornYears">Age of the sensor at which it turned hot, years; 0 for the first ones.</param>
internal readonly record struct HotPixel(int Index, double Rate, double Activation, double BornYears)
{
    /// <summary>Level that generates its dark current; null where it follows the ordinary pixels' law.</summary>
    public DefectEnergy? Level { get; init; }
}
