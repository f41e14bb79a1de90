namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The samples of one pixel in one set of frames taken under the same conditions.</summary>
/// <param name="Values">Samples in time order, e-, from an arbitrary zero.</param>
/// <param name="Variance">Variance that noise and signal of a sound pixel explain, e-².</param>
/// <param name="Thermal">Signal that a dark rate of 1 e-/px/s at the reference temperature adds to a sample here,
/// e-.</param>
/// <param name="StartSeconds">Start of each frame on any clock, s; NaN when unknown.</param>
internal readonly record struct SampleGroup(double[] Values, double Variance, double Thermal, double[] StartSeconds);
