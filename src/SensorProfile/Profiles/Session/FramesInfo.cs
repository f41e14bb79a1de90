namespace SensorProfile.Profiles.Session;

/// <summary>The frames behind a profile.</summary>
public sealed record FramesInfo
{
    /// <summary>Number of frames that were measured.</summary>
    public int Used { get; init; }

    /// <summary>Files that were left out, with the reason.</summary>
    public IReadOnlyList<RejectedFile> Rejected { get; init; } = [];

    /// <summary>
    /// SHA-256 over the names, sizes and pixel sums of the frames used, in order: the same frames give the same digest.
    /// </summary>
    public string InputDigest { get; init; } = "";

    /// <summary>
    /// One line per frame for the session page: what it was, when, at which temperature, at which level.
    /// </summary>
    public IReadOnlyList<FrameSummary> Session { get; init; } = [];
}
