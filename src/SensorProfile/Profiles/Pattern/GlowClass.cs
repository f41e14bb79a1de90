namespace SensorProfile.Profiles.Pattern;

/// <summary>Pixels that share a strength of the glow.</summary>
/// <remarks>
/// With the thermal rates of <see cref="FixedPatternProfile.ThermalQuantiles"/> this is the joint distribution: a pixel of
/// the class has a thermal rate by those, a glow of this rate, and a chance to be hot by <paramref name="HotShare"/>.
/// </remarks>
/// <param name="Share">Share of all pixels, 0…1; the classes add up to 1.</param>
/// <param name="Rate">Mean glow of the class, e-/px/s at the reference temperature; 0 where nothing glows.</param>
/// <param name="HotShare">Share of the class whose thermal rate exceeds the threshold of hot pixels, 0…1.</param>
public sealed record GlowClass(double Share, double Rate, double HotShare);
