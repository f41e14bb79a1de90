namespace SensorProfile.Profiles.Pattern;

/// <summary>Dark rate that a share of the pixels does not exceed.</summary>
/// <param name="Share">0…1.</param>
/// <param name="Rate">e-/px/s at the reference temperature, its uncertainty beside it.</param>
public sealed record RateQuantile(double Share, Measurement Rate);
