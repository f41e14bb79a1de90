namespace SensorProfile.NoiseModel.Noise;

/// <summary>The noise of the pixel at one rank of the measured dark rates.</summary>
/// <param name="Share">Share of the pixels that are not faster than this one, 0…1.</param>
/// <param name="DarkRate">Its dark rate at the temperature of the lights, e-/px/s.</param>
/// <param name="SubNoise">Noise of one calibrated light, e-.</param>
/// <param name="StackNoise">Noise of the stack, e-.</param>
public sealed record NoiseAtRank(double Share, double DarkRate, double SubNoise, double StackNoise);
