namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The samples of one pixel in one set of frames taken under the same conditions.</summary>
/// <param name="Values">In the order of time, e-; where they are counted from does not matter.</param>
/// <param name="Variance">What noise and signal of a sound pixel explain, e-².</param>
/// <param name="Thermal">By how much a dark rate of 1 e-/px/s at the reference temperature raises a sample here,
/// e-.</param>
/// <param name="StartSeconds">Start of each frame on any clock, s; not a number where unknown.</param>
internal readonly record struct SampleGroup(double[] Values, double Variance, double Thermal, double[] StartSeconds);
