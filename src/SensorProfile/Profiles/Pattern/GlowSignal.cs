namespace SensorProfile.Profiles.Pattern;

/// <summary>Signal of a glowing place at one exposure and temperature.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="Exposure">s.</param>
/// <param name="Signal">At its brightest cell, above the floor, e-.</param>
public sealed record GlowSignal(double Temperature, double Exposure, Measurement Signal);
