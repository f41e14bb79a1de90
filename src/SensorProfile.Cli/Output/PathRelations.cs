namespace SensorProfile.Cli.Output;

/// <summary>Where two paths stand to each other on disk.</summary>
internal static class PathRelations
{
    private static readonly StringComparison Comparison =
        OperatingSystem.IsWindows() || OperatingSystem.IsMacOS()
            ? StringComparison.OrdinalIgnoreCase
            : StringComparison.Ordinal;

    /// <summary>Full path with the links on the way followed as far as the folders exist.</summary>
    public static string Resolved(string path)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        string? parent = Path.GetDirectoryName(full);
        if (parent is null)
            return full;
        string here = Path.Combine(Resolved(parent), Path.GetFileName(full));
        try
        {
            return Directory.ResolveLinkTarget(here, returnFinalTarget: true)?.FullName is { } target
                ? Path.TrimEndingDirectorySeparator(target)
                : here;
        }
        catch (IOException)
        {
            return here; // a link that leads in circles, or nothing there yet
        }
        catch (UnauthorizedAccessException)
        {
            return here;
        }
    }

    public static bool IsSameOrInside(string path, string folder) =>
        path.Equals(folder, Comparison)
        || path.StartsWith(folder.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar, Comparison);
}
