namespace SensorProfile.Cli.Output;

/// <summary>Fills an existing output folder with new results and leaves all other files alone.</summary>
internal static class FolderMerge
{
    public static void Into(string source, string target)
    {
        string[] earlier = [.. EarlierResults.In(target, source)];
        HashSet<string> placed = new(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            string place = Path.Combine(target, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Move(file, place, overwrite: true);
            placed.Add(place);
        }
        // last, so that a run that stops before has lost nothing
        foreach (string file in earlier.Where(f => !placed.Contains(f)))
            File.Delete(file);
        Directory.Delete(source, recursive: true);
    }
}
