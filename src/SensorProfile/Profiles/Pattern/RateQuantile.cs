namespace SensorProfile.Profiles.Pattern;

/// <summary>Dark rate that a share of the pixels does not exceed.</summary>
/// <param name="Share">0…1.</param>
/// <param name="Rate">Dark rate with its uncertainty, e-/px/s at the reference temperature.</param>
public sealed record RateQuantile(double Share, Measurement Rate);
