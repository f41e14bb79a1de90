using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>The glow of a sensor.</summary>
/// <param name="Field">Glow of every pixel.</param>
/// <param name="Regions">Strongest first.</param>
/// <param name="FloorFactor">By what factor the map shows pixels that do not glow too bright (<see cref="FloorLaw"/>).</param>
internal sealed record GlowFinding(GlowField Field, IReadOnlyList<GlowRegion> Regions, double FloorFactor);
