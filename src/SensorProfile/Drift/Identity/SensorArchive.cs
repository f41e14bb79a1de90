using SensorProfile.Drift.Archive;

namespace SensorProfile.Drift.Identity;

/// <summary>
/// Keeps sessions in an archive, one folder per sensor: sensors with the same camera name are told apart by their
/// pixels.
/// </summary>
public static class SensorArchive
{
    private const string Apart = "-sensor-";

    /// <summary>Files a session beside the earlier ones of its sensor.</summary>
    /// <remarks>
    /// The first sensor of a name has the folder of that name, the next one <c>name-sensor-2</c> and so on. A session
    /// that cannot be identified goes to the first folder that may be its own.
    /// </remarks>
    /// <param name="archive">Folder of the archive; created if missing.</param>
    /// <param name="profile">The profile.</param>
    /// <returns>The session's folder, and what could not be kept or was filed apart.</returns>
    /// <exception cref="IOException">The archive cannot be written, or it already holds another profile of that sensor
    /// and day.</exception>
    public static (string Folder, IReadOnlyList<Finding> Findings) Keep(string archive, ProfileOnDisk profile)
    {
        ArgumentException.ThrowIfNullOrEmpty(archive);
        ArgumentNullException.ThrowIfNull(profile);
        (string name, Finding? apart) = FolderOf(archive, profile);
        (string folder, IReadOnlyList<Finding> findings) = ProfileArchive.Keep(archive, profile, name);
        return (folder, apart is null ? findings : [.. findings, apart]);
    }

    private static (string Name, Finding? Apart) FolderOf(string archive, ProfileOnDisk profile)
    {
        string name = ProfileArchive.FolderName(profile.Profile.Camera.Name),
            next = name;
        SensorFingerprint? own = SensorFingerprint.Read(profile, PixelRates.Read);
        string? unsure = null,
            evidence = null;
        for (int sensor = 2; Directory.Exists(Path.Combine(archive, next)); sensor++)
        {
            SensorFingerprint? kept = Newest(Path.Combine(archive, next));
            SensorIdentity? identity = own is null || kept is null ? null : kept.Compare(own, PixelRates.Read);
            if (identity is { Match: SensorMatch.Same })
                return (next, null);
            if (identity is not { Match: SensorMatch.Another })
                unsure ??= next;
            evidence ??= identity?.Evidence;
            next = $"{name}{Apart}{sensor}";
        }
        if (unsure is not null || next == name)
            return (unsure ?? next, null);
        return (
            next,
            new Finding(
                FindingCodes.AnotherSensor,
                Severity.Warning,
                $"{profile.File} is from another sensor than the sessions kept under {name} ({evidence}): it was filed "
                    + $"separately, under {next}, and will not be compared with them.",
                [profile.File]
            )
        );
    }

    private static SensorFingerprint? Newest(string folder) =>
        ProfileArchive
            .Read([folder])
            .Profiles.Reverse()
            .Select(p => SensorFingerprint.Read(p, PixelRates.Read))
            .FirstOrDefault(print => print is not null);
}
