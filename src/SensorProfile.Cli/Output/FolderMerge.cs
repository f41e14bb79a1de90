namespace SensorProfile.Cli.Output;

/// <summary>Fills an existing output folder with new results and leaves alone what it did not write.</summary>
internal static class FolderMerge
{
    /// <summary>Files that an earlier run wrote and that would mislead beside new ones: sub-folder and extension.</summary>
    private static readonly (string Folder, string Extension)[] Outdated = [("tables", ".csv"), ("maps", ".fits")];

    public static void Into(string source, string target)
    {
        foreach ((string folder, string extension) in Outdated)
            if (Directory.Exists(Path.Combine(source, folder)) && IsOurs(target)) Clear(Path.Combine(target, folder), extension);
        foreach (string file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            string place = Path.Combine(target, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Move(file, place, overwrite: true);
        }
        Directory.Delete(source, recursive: true);
    }

    private static bool IsOurs(string folder) => File.Exists(Path.Combine(folder, "profile.json")) || File.Exists(Path.Combine(folder, "report.html"));

    private static void Clear(string folder, string extension)
    {
        if (!Directory.Exists(folder)) return;
        foreach (string file in Directory.GetFiles(folder, "*" + extension, SearchOption.AllDirectories)) File.Delete(file);
    }
}
