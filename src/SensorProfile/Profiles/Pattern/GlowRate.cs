namespace SensorProfile.Profiles.Pattern;

/// <summary>Rate of a glowing place at one temperature.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="Rate">At its brightest cell, above the floor, e-/px/s.</param>
public sealed record GlowRate(double Temperature, Measurement Rate);
