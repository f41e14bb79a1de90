namespace SensorProfile;

/// <summary>A measured quantity with its uncertainty: no result leaves a room as a bare number.</summary>
/// <param name="Value">The best estimate, in <paramref name="Unit"/>.</param>
/// <param name="StandardUncertainty">One standard uncertainty (GUM, JCGM 100:2008), in the unit of the value; never
/// negative.</param>
/// <param name="Unit">Unit as printed: "e-", "ADU", "e-/ADU", "e-/px/s", "°C", "s", "%", "stops", "1" …</param>
/// <param name="Samples">How many independent observations stand behind it (pixels, pairs or frames; the method says
/// which).</param>
/// <param name="Method">One short phrase that names the method and its source.</param>
public sealed record Measurement(double Value, double StandardUncertainty, string Unit, long Samples, string Method);
