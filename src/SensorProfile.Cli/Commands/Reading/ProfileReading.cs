using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Reads a stored profile.</summary>
internal static class ProfileReading
{
    /// <summary>The profile in a file, or in the folder that characterise wrote.</summary>
    public static CameraProfile Read(string path)
    {
        string file = FileOf(path);
        if (!File.Exists(file))
            throw CommandFailure.UnreadableInput(
                $"{path}: there is no profile here. Give a profile.json or the folder that holds it."
            );
        return ProfileFile.Read(file);
    }

    public static string FileOf(string path) => Directory.Exists(path) ? Path.Combine(path, "profile.json") : path;
}
