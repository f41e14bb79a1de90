namespace SensorProfile.Profiles.Pattern;

/// <summary>
/// Pixels above a dark rate at one of the measured temperatures: every pixel's rate at the reference temperature
/// brought there by its own law, or by that of its class of rate.
/// </summary>
/// <param name="Temperature">°C.</param>
/// <param name="Counts">Ascending thresholds.</param>
public sealed record HotPixelCurveAt(double Temperature, IReadOnlyList<HotPixelCount> Counts);
