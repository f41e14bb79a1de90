namespace SensorProfile.Simulation.Truth;

/// <summary>A true group of touching hot pixels, which are also listed as hot pixels.</summary>
/// <param name="Pixels">Its pixels, ordered by position.</param>
/// <param name="Rate">Excess of each over the ordinary rate at the reference temperature of the die, e-/px/s.</param>
internal sealed record TrueCluster(IReadOnlyList<TruePlace> Pixels, double Rate);
