namespace SensorProfile.Profiles;

/// <summary>The frames behind a profile.</summary>
public sealed record FramesInfo
{
    /// <summary>Number of frames that were measured.</summary>
    public int Used { get; init; }

    /// <summary>Files that were left out, with the reason.</summary>
    public IReadOnlyList<RejectedFile> Rejected { get; init; } = [];

    /// <summary>SHA-256 over the names, sizes and pixel sums of the frames used, in order: the same frames give the same digest.</summary>
    public string InputDigest { get; init; } = "";

    /// <summary>One line per frame for the session page: what it was, when, at which temperature, at which level.</summary>
    public IReadOnlyList<FrameSummary> Session { get; init; } = [];
}

/// <summary>A file that was left out.</summary>
/// <param name="File">Name relative to the folder that was given.</param>
/// <param name="Reason">One plain sentence.</param>
public sealed record RejectedFile(string File, string Reason);

/// <summary>One frame of the session.</summary>
/// <param name="File">Name relative to the folder that was given.</param>
/// <param name="Kind">bias, dark, flat, dark-flat or light.</param>
/// <param name="Exposure">s; null when unknown.</param>
/// <param name="Temperature">Sensor temperature as read, °C; null when unknown.</param>
/// <param name="StartUtc">Start of the exposure; null when unknown.</param>
/// <param name="Level">Median level, ADU; null when not measured.</param>
/// <param name="Mode">Index into the profile's modes; null when in none.</param>
public sealed record FrameSummary(string File, string Kind, double? Exposure, double? Temperature, DateTimeOffset? StartUtc, double? Level, int? Mode);
