namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Slices of neighbouring temperature that one master serves.</summary>
/// <param name="First">First slice, coldest first.</param>
/// <param name="Count">Number of slices.</param>
/// <param name="Celsius">Temperature of the master, °C.</param>
/// <param name="Frames">Darks in it.</param>
/// <param name="Load">Largest share of a limit that the mismatch uses, 0…1.</param>
internal sealed record MasterGroup(int First, int Count, double Celsius, double Frames, double Load);
