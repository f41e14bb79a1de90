using SensorProfile.Characterisation.Maps;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting;

namespace SensorProfile.Cli.Output;

/// <summary>Writes the results of a characterisation: profile, report, tables, maps.</summary>
internal static class ResultsFolder
{
    public static void Write(string folder, CharacterisationResult result, CancellationToken stop)
    {
        WriteMeasured(folder, result, stop);
        WriteReport(folder, result.Profile, stop);
    }

    /// <summary>Writes profile and maps; the maps in memory are not needed afterwards.</summary>
    public static void WriteMeasured(string folder, CharacterisationResult result, CancellationToken stop)
    {
        ProfileFile.Write(Path.Combine(folder, "profile.json"), result.Profile);
        stop.ThrowIfCancellationRequested();
        MapFiles.Write(result, folder);
        stop.ThrowIfCancellationRequested();
    }

    /// <summary>Writes the report, from the profile and the maps just written.</summary>
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
