namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The temperature of one light.</summary>
/// <param name="File">Name relative to the folder that was given.</param>
/// <param name="StartUtc">Start of the exposure; null when unknown.</param>
/// <param name="Celsius">Sensor temperature as read, °C; null when unknown.</param>
/// <param name="Within">Whether it lies within the tolerance of the darks; null when either is not known.</param>
internal sealed record LightTemperature(string File, DateTimeOffset? StartUtc, double? Celsius, bool? Within);
