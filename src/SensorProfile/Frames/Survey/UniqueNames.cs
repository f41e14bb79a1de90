namespace SensorProfile.Frames.Survey;

/// <summary>Distinguishes names when two given folders hold files of the same relative name.</summary>
internal static class UniqueNames
{
    /// <summary>
    /// A unique name stays; a repeated one is prefixed with as many names of the folders above its root as are needed.
    /// </summary>
    public static IReadOnlyList<ScannedFile> Give(IReadOnlyList<(string Root, ScannedFile File)> found)
    {
        string[] names = [.. found.Select(f => f.File.Name)];
        string[] rest = [.. found.Select(f => f.Root)];
        while (true)
        {
            int[] clashes =
            [
                .. Enumerable
                    .Range(0, names.Length)
                    .GroupBy(i => names[i], StringComparer.Ordinal)
                    .Where(g => g.Count() > 1)
                    .SelectMany(g => g),
            ];
            bool changed = false;
            foreach (int i in clashes)
            {
                string folder = Path.GetFileName(rest[i]);
                if (folder.Length == 0)
                    continue; // the root of the file system
                names[i] = folder + "/" + names[i];
                rest[i] = Path.GetDirectoryName(rest[i]) ?? "";
                changed = true;
            }
            if (!changed)
                return [.. found.Select((f, i) => f.File with { Name = names[i] })];
        }
    }
}
