using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Maps;

/// <summary>Where the maps of each mode stand, relative to the profile.</summary>
internal static class MapFolders
{
    public static IReadOnlyList<string> Of(CameraProfile profile) =>
        profile.Modes.Count == 1 ? ["maps"] : [.. ModeLabel.Folders(profile.Modes).Select(name => Path.Combine("maps", name))];
}
