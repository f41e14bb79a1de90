namespace SensorProfile.Cli.Output;

/// <summary>How two paths relate on disk.</summary>
internal static class PathRelations
{
    private static readonly StringComparison Comparison =
        OperatingSystem.IsWindows() || OperatingSystem.IsMacOS()
            ? StringComparison.OrdinalIgnoreCase
            : StringComparison.Ordinal;

    /// <summary>Full path with links resolved as far as the folders exist.</summary>
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
            return here; // a circular link, or nothing there yet
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
