namespace SensorProfile.Cli.Output;

/// <summary>The maps beside a stored profile, and the list of defect pixels made from them.</summary>
internal static class StoredMaps
{
    /// <summary>Copies the maps that still exist; a profile without maps has none to copy.</summary>
    public static void Copy(string from, string to, CancellationToken stop)
    {
        foreach (string file in In(from))
        {
            stop.ThrowIfCancellationRequested();
            string place = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Copy(file, place);
        }
    }

    private static IEnumerable<string> In(string folder)
    {
        string maps = Path.Combine(folder, "maps"),
            defects = Path.Combine(folder, "tables", "defects.csv");
        if (Directory.Exists(maps))
            foreach (
                string file in Directory
                    .EnumerateFiles(maps, "*.fits", SearchOption.AllDirectories)
                    .Order(StringComparer.Ordinal)
            )
                yield return file;
        if (File.Exists(defects))
            yield return defects;
    }
}
