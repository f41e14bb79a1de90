using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>The glow of a sensor.</summary>
/// <param name="Field">Glow of every pixel.</param>
/// <param name="Regions">Regions that glow, strongest first.</param>
internal sealed record GlowFinding(GlowField Field, IReadOnlyList<GlowRegion> Regions);
