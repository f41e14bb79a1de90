namespace SensorProfile.NoiseModel.Camera;

/// <summary>What a temperature does to the pixels.</summary>
/// <param name="Thermal">Thermal dark current of the typical pixel, in units of its value at the reference
/// temperature.</param>
/// <param name="Floor">Part of every pixel's rate that does not depend on temperature, e-/px/s.</param>
internal readonly record struct Growth(double Thermal, double Floor);
