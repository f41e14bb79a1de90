using System.Globalization;
using SensorProfile.FixedPattern;
using SensorProfile.Profiles;

namespace SensorProfile.Characterisation;

/// <summary>Defect pixels one by one as CSV (RFC 4180).</summary>
internal static class DefectTable
{
    /// <summary>Pixels that are only in a defect line are as many as the line is long; the map shows them, the table leaves them out.</summary>
    private const DefectClass NotListed = DefectClass.Line;

    /// <summary>Writes the table; returns its path, or null when no mode has a defect map.</summary>
    public static string? Write(CharacterisationResult result, string path)
    {
        if (result.Maps.All(m => m.Defects is null)) return null;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        AtomicFile.Write(path, stream =>
        {
            using var writer = new StreamWriter(stream, leaveOpen: true) { NewLine = "\r\n" };
            writer.WriteLine("x,y,kind,rate,rate_uncertainty,doubling,read_noise,mode");
            for (int m = 0; m < result.Maps.Count; m++)
                foreach (string line in Lines(result.Maps[m], ModeLabel.Text(result.Profile.Modes[m].Settings))) writer.WriteLine(line);
        });
        return path;
    }

    private static IEnumerable<string> Lines(ModeMaps maps, string mode)
    {
        for (int i = 0; i < (maps.Defects?.Length ?? 0); i++)
        {
            var found = (DefectClass)maps.Defects![i];
            if ((found & ~NotListed) == 0) continue;
            yield return string.Create(CultureInfo.InvariantCulture,
                $"{i % maps.Width + 1},{i / maps.Width + 1},{DefectKeys.Text(found)},{Number(maps.DarkRate, i)},{Number(maps.DarkRateUncertainty, i)},{Number(maps.Doubling, i)},{Number(maps.ReadNoise, i)},\"{mode.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
        }
    }

    private static string Number(float[]? map, int i) => map is null || !float.IsFinite(map[i]) ? "" : map[i].ToString("R", CultureInfo.InvariantCulture);
}
