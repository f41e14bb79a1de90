using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>How strongly parts of a sensor glow.</summary>
/// <param name="Classes">Parts of the sensor: share, glow at the reference temperature, hot pixels.</param>
/// <param name="Scale">Factor on the rates, for a random draw.</param>
/// <param name="StrongAbove">Glow above which a pixel no longer counts as typical, e-/px/s.</param>
/// <param name="Pixels">Pixels of the sensor.</param>
internal sealed record GlowParts(IReadOnlyList<GlowClass> Classes, double Scale, double StrongAbove, double Pixels);
