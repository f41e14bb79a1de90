namespace SensorProfile.Cli.Output;

/// <summary>Fills an existing output folder with new results and leaves alone what it did not write.</summary>
internal static class FolderMerge
{
    public static void Into(string source, string target)
    {
        foreach (string file in EarlierResults.In(target, source)) File.Delete(file);
        foreach (string file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            string place = Path.Combine(target, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Move(file, place, overwrite: true);
        }
        Directory.Delete(source, recursive: true);
    }
}
