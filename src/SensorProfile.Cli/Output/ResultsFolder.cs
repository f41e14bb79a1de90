using SensorProfile.Characterisation.Maps;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting;

namespace SensorProfile.Cli.Output;

/// <summary>Everything that a characterisation leaves: profile, report, tables, maps.</summary>
internal static class ResultsFolder
{
    public static void Write(string folder, CharacterisationResult result, CancellationToken stop)
    {
        WriteMeasured(folder, result, stop);
        WriteReport(folder, result.Profile, stop);
    }

    /// <summary>Profile and maps; the maps in memory are not needed afterwards.</summary>
    public static void WriteMeasured(string folder, CharacterisationResult result, CancellationToken stop)
    {
        ProfileFile.Write(Path.Combine(folder, "profile.json"), result.Profile);
        stop.ThrowIfCancellationRequested();
        MapFiles.Write(result, folder);
        stop.ThrowIfCancellationRequested();
    }

    /// <summary>The report, from the profile and what it needs of the maps just written.</summary>
    public static void WriteReport(string folder, CameraProfile profile, CancellationToken stop)
    {
        ReportWriter.Write(
            profile,
            folder,
            new ReportOptions { Maps = ReportMaps.Read(Path.Combine(folder, "maps"), profile) }
        );
        stop.ThrowIfCancellationRequested();
    }
}
