using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Drift.Archive;

/// <summary>A stored profile with the maps beside it.</summary>
/// <param name="File">Its path, as the user gave it.</param>
/// <param name="Profile">What was measured.</param>
/// <param name="MapsFolder">Folder of its per-pixel maps; null when there is none, so that pixels cannot be compared
/// one by one.</param>
public sealed record ProfileOnDisk(string File, CameraProfile Profile, string? MapsFolder = null)
{
    /// <summary>
    /// When the first frame of the session was taken; the date of the profile when its frames carry none.
    /// </summary>
    public DateTimeOffset DateUtc => Profile.Frames.Session.Min(f => f.StartUtc) ?? Profile.CreatedUtc;

    /// <summary>Whether <see cref="DateUtc"/> comes from the frames, not from the profile.</summary>
    internal bool HasDateOfFrames => Profile.Frames.Session.Any(f => f.StartUtc is not null);

    /// <summary>Reads a profile and locates its maps.</summary>
    /// <param name="path">A <c>profile.json</c>, or the folder that holds it.</param>
    /// <exception cref="ProfileFormatException">The file is not a profile, or is damaged; the message names the
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
