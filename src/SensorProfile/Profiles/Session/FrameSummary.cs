namespace SensorProfile.Profiles.Session;

/// <summary>One frame of the session.</summary>
/// <param name="File">Name relative to the folder that was given.</param>
/// <param name="Kind">bias, dark, flat, dark-flat or light.</param>
/// <param name="Exposure">s; null when unknown.</param>
/// <param name="Temperature">Sensor temperature as read, °C; null when unknown.</param>
/// <param name="StartUtc">Start of the exposure; null when unknown.</param>
/// <param name="Level">Median level, ADU; null when not measured.</param>
/// <param name="Mode">Index into the profile's modes; null when in none.</param>
public sealed record FrameSummary(
    string File,
    string Kind,
    double? Exposure,
    double? Temperature,
    DateTimeOffset? StartUtc,
    double? Level,
    int? Mode
);
