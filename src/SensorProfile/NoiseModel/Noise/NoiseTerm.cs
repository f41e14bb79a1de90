namespace SensorProfile.NoiseModel.Noise;

/// <summary>One source of noise in one calibrated light of the typical pixel.</summary>
/// <param name="Name">sky, dark, glow, read, quantisation, master dark, master bias, mismatch.</param>
/// <param name="Noise">Standard deviation, e-.</param>
/// <param name="ShareOfSub">Share of the variance of one light, 0…1.</param>
/// <param name="ShareOfStack">Share of the variance of the stack, 0…1.</param>
public sealed record NoiseTerm(string Name, Measurement Noise, double ShareOfSub, double ShareOfStack);
