using SensorProfile.Profiles;

namespace SensorProfile.FixedPattern;

/// <summary>The glow of a sensor.</summary>
/// <param name="Map">Rate above the floor at the reference temperature, e-/px/s; 0 where nothing glows.</param>
/// <param name="Regions">Strongest first.</param>
internal sealed record GlowFinding(float[] Map, IReadOnlyList<GlowRegion> Regions);
