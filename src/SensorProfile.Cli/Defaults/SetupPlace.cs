using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Defaults;

/// <summary>Where a setup is looked for: the place given, beside the profile, then the user's configuration folder.</summary>
internal static class SetupPlace
{
    /// <summary>The setup in the user's configuration folder; null where the system has no such folder.</summary>
    public static string? OfUser
    {
        get
        {
            string folder = Environment.GetFolderPath(
                Environment.SpecialFolder.ApplicationData,
                Environment.SpecialFolderOption.DoNotVerify
            );
            return folder.Length == 0 ? null : Path.Combine(folder, "sensorprofile", SetupFile.Name);
        }
    }

    /// <summary>The first setup that exists; null when there is none.</summary>
    /// <param name="given">The place given; a setup must exist there.</param>
    /// <param name="profile">The profile named; null when none was.</param>
    /// <exception cref="CommandFailure">A setup was named that is not there.</exception>
    public static string? Find(string? given, string? profile)
    {
        if (given is not null)
        {
            string file = Directory.Exists(given) ? Path.Combine(given, SetupFile.Name) : given;
            return File.Exists(file)
                ? file
                : throw CommandFailure.UnreadableInput(
                    $"{given}: there is no setup here; write one with: sensorprofile setup --out {Quoted.Of(given)}"
                );
        }
        string? beside = profile is null
            ? null
            : Path.Combine(Path.GetDirectoryName(Path.GetFullPath(ProfileReading.FileOf(profile)))!, SetupFile.Name);
        return File.Exists(beside) ? beside
            : File.Exists(OfUser) ? OfUser
            : null;
    }
}
