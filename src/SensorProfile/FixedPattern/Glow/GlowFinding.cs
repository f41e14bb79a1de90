using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>The glow of a sensor.</summary>
/// <param name="Field">Glow of every pixel.</param>
/// <param name="Regions">Strongest first.</param>
/// <param name="FloorShift">By how much the floor was shown too bright and set right, as a share of it
/// (<see cref="FloorLaw"/>).</param>
internal sealed record GlowFinding(GlowField Field, IReadOnlyList<GlowRegion> Regions, double FloorShift);
