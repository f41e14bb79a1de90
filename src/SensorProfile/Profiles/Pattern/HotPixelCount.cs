namespace SensorProfile.Profiles.Pattern;

/// <summary>Number of pixels above a dark rate.</summary>
/// <param name="Threshold">Dark rate, e-/px/s at the reference temperature.</param>
/// <param name="Count">Pixels above it.</param>
/// <param name="Low">Lower end of the 95 % counting interval.</param>
/// <param name="High">Upper end of the 95 % counting interval.</param>
public sealed record HotPixelCount(double Threshold, long Count, double Low, double High);
