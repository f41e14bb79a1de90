using System.Text.Json;

namespace SensorProfile.Cli.Output;

/// <summary>Files of an earlier run that would mislead beside new ones.</summary>
internal static class EarlierResults
{
    /// <summary>
    /// Tables, maps and simulated frames of an earlier run in <paramref name="target"/>, where
    /// <paramref name="source"/> brings new ones; nothing for a folder without results of this program.
    /// </summary>
    public static IEnumerable<string> In(string target, string source)
    {
        bool report =
            File.Exists(Path.Combine(target, "profile.json")) || File.Exists(Path.Combine(target, "report.html"));
        if (report && Directory.Exists(Path.Combine(source, "tables")))
            return [.. Below(target, "tables", "*.csv"), .. Below(target, "maps", "*.fits")];
        return File.Exists(Path.Combine(source, "truth.json")) ? SimulatedFrames(target) : [];
    }

    private static string[] Below(string target, string folder, string pattern)
    {
        string place = Path.Combine(target, folder);
        return Directory.Exists(place) ? Directory.GetFiles(place, pattern, SearchOption.AllDirectories) : [];
    }

    /// <summary>The frames that an earlier truth.json names.</summary>
    private static IEnumerable<string> SimulatedFrames(string target)
    {
        string truth = Path.Combine(target, "truth.json");
        if (!File.Exists(truth))
            return [];
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(truth));
            return
            [
                .. document
                    .RootElement.GetProperty("frames")
                    .EnumerateArray()
                    .Select(f => Path.Combine(target, Path.GetFileName(f.GetProperty("file").GetString()!)))
                    .Where(File.Exists),
            ];
        }
        catch (Exception problem) when (problem is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return []; // not one of ours: touch nothing
        }
    }
}
