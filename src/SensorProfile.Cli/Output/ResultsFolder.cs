using SensorProfile.Characterisation;
using SensorProfile.Profiles;
using SensorProfile.Reporting;

namespace SensorProfile.Cli.Output;

/// <summary>Everything that a characterisation leaves: profile, report, tables, maps.</summary>
internal static class ResultsFolder
{
    public static void Write(string folder, CharacterisationResult result, CancellationToken stop)
    {
        ProfileFile.Write(Path.Combine(folder, "profile.json"), result.Profile);
        stop.ThrowIfCancellationRequested();
        MapFiles.Write(result, folder);
        stop.ThrowIfCancellationRequested();
        ReportWriter.Write(result.Profile, folder, new ReportOptions { Maps = ReportMaps.Read(Path.Combine(folder, "maps"), result.Profile) });
        stop.ThrowIfCancellationRequested();
    }
}
