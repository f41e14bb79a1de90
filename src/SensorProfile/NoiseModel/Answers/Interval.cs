namespace SensorProfile.NoiseModel.Answers;

/// <summary>A 95 % interval.</summary>
/// <param name="Low">Lower end; null when it lies beyond the reach of the profile.</param>
/// <param name="High">Upper end; null when it lies beyond the reach of the profile.</param>
public sealed record Interval(double? Low, double? High);
