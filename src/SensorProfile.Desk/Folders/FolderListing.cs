namespace SensorProfile.Desk.Folders;

/// <summary>A folder of this machine and the folders in it, for browsing.</summary>
/// <param name="Path">The folder.</param>
/// <param name="Parent">The one above it; null at the top.</param>
/// <param name="Folders">The folders in it, by name; hidden ones are left out.</param>
/// <param name="Files">How many files it holds.</param>
/// <param name="Trouble">Why it cannot be opened; empty when it can.</param>
internal sealed record FolderListing(
    string Path,
    string? Parent,
    IReadOnlyList<string> Folders,
    int Files,
    string Trouble
)
{
    private const int MostFolders = 400;

    /// <summary>The user's home folder.</summary>
    public static string Home => Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);

    /// <summary>Lists a folder.</summary>
    public static FolderListing Read(string path)
    {
        DirectoryInfo folder;
        try
        {
            folder = new DirectoryInfo(System.IO.Path.GetFullPath(path));
            if (!folder.Exists)
                return new(path, null, [], 0, $"{path}: there is no such folder on this machine.");
            FileSystemInfo[] entries = [.. folder.EnumerateFileSystemInfos()];
            return new(
                folder.FullName,
                folder.Parent?.FullName,
                [
                    .. entries
                        .OfType<DirectoryInfo>()
                        .Where(d => !d.Name.StartsWith('.') && !d.Attributes.HasFlag(FileAttributes.Hidden))
                        .Select(d => d.Name)
                        .Order(StringComparer.OrdinalIgnoreCase)
                        .Take(MostFolders),
                ],
                entries.OfType<FileInfo>().Count(),
                ""
            );
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return new(path, null, [], 0, $"{path}: cannot be opened ({problem.Message.TrimEnd('.')}).");
        }
    }
}
