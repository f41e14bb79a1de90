using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Drift.Archive;

/// <summary>A stored profile with the maps beside it.</summary>
/// <param name="File">Where it was read from, as the user gave it.</param>
/// <param name="Profile">What was measured.</param>
/// <param name="MapsFolder">Folder of its per-pixel maps; null when there is none, and pixels cannot be compared one by
/// one.</param>
public sealed record ProfileOnDisk(string File, CameraProfile Profile, string? MapsFolder = null)
{
    /// <summary>
    /// When the frames were taken: the first of the session; the date of the profile where its frames carry none.
    /// </summary>
    public DateTimeOffset DateUtc => Profile.Frames.Session.Min(f => f.StartUtc) ?? Profile.CreatedUtc;

    /// <summary>Whether <see cref="DateUtc"/> is that of the frames, not of the file.</summary>
    internal bool HasDateOfFrames => Profile.Frames.Session.Any(f => f.StartUtc is not null);

    /// <summary>Reads a profile and notes where its maps are.</summary>
    /// <param name="path">A <c>profile.json</c>, or the folder that holds it.</param>
    /// <exception cref="ProfileFormatException">The file is no profile, or is damaged; the message names the
    /// place.</exception>
    /// <exception cref="IOException">It is missing or cannot be read.</exception>
    public static ProfileOnDisk Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        string file = Directory.Exists(path) ? Path.Combine(path, ProfileArchive.ProfileName) : path;
        string maps = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file))!, ProfileArchive.MapsName);
        return new ProfileOnDisk(file, ProfileFile.Read(file), Directory.Exists(maps) ? maps : null);
    }
}
