using SensorProfile.Profiles.Session;

namespace SensorProfile.Profiles;

/// <summary>Everything measured of one camera in one session: the content of <c>profile.json</c>.</summary>
/// <remarks>A quantity that could not be measured is null, and a finding says why.</remarks>
public sealed record CameraProfile
{
    /// <summary>The schema version that this program writes.</summary>
    public const int CurrentSchemaVersion = 1;

    /// <summary>Version of the document's schema; readers accept any earlier one.</summary>
    public int SchemaVersion { get; init; } = CurrentSchemaVersion;

    /// <summary>When the profile was made (UTC).</summary>
    public DateTimeOffset CreatedUtc { get; init; }

    /// <summary>The program that made it.</summary>
    public SoftwareInfo Software { get; init; } = new("sensorprofile", "0");

    /// <summary>The camera as its frames show it.</summary>
    public CameraInfo Camera { get; init; } = new();

    /// <summary>
    /// One entry for each combination of settings (gain, offset, binning, read-out) that was measured.
    /// </summary>
    public IReadOnlyList<ModeProfile> Modes { get; init; } = [];

    /// <summary>Everything the user should know about these measurements.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The frames behind the numbers.</summary>
    public FramesInfo Frames { get; init; } = new();
}
