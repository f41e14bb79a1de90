using System.Security;

namespace SensorProfile.Frames.Survey;

/// <summary>
/// Finds FITS, DNG, TIFF and other raw files under the given paths: deterministic order, each file once, links followed
/// but never in circles.
/// </summary>
internal sealed class FolderScan
{
    private readonly HashSet<string> visitedFolders = new(StringComparer.Ordinal);

    // real path → name under which it was found
    private readonly Dictionary<string, string> firstNameOf = new(StringComparer.Ordinal);
    private readonly List<(string Root, ScannedFile File)> found = [];
    private readonly List<string> repeatedNames = [];
    private readonly List<Finding> findings = [];
    private readonly List<(string Path, string Reason)> missing = [];
    private readonly Dictionary<(FileContent Content, string Ending), int> passedOver = [];

    private FolderScan() { }

    /// <summary>
    /// The files found, in the order of the given paths, then by name; findings; paths that do not exist; files that
    /// cannot hold a frame.
    /// </summary>
    public static (
        IReadOnlyList<ScannedFile> Files,
        IReadOnlyList<Finding> Findings,
        IReadOnlyList<(string Path, string Reason)> Missing,
        IReadOnlyList<PassedOver> PassedOver
    ) Scan(IReadOnlyList<string> paths, CancellationToken ct)
    {
        FolderScan scan = new();
        foreach (string path in paths)
            scan.AddPath(path, ct);
        if (scan.repeatedNames.Count > 0)
            scan.findings.Add(
                new Finding(
                    FindingCodes.DuplicatePath,
                    Severity.Note,
                    $"{Counted.Files(scan.repeatedNames.Count)} can be reached in more than one way (a path given "
                        + "twice, or a link); each file was taken once.",
                    scan.repeatedNames
                )
            );
        return (UniqueNames.Give(scan.found), scan.findings, scan.missing, scan.CountPassedOver());
    }

    private IReadOnlyList<PassedOver> CountPassedOver() =>
        [
            .. passedOver
                .OrderByDescending(kind => kind.Value)
                .ThenBy(kind => kind.Key.Content)
                .ThenBy(kind => kind.Key.Ending, StringComparer.Ordinal)
                .Select(kind => new PassedOver(
                    kind.Key.Ending.Length > 0 ? kind.Key.Ending + " file" : FileContents.Word(kind.Key.Content),
                    kind.Value
                )),
        ];

    private void AddPath(string path, CancellationToken ct)
    {
        string full = Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            string root = Path.TrimEndingDirectorySeparator(full);
            Walk(root, root, "", RealPath(root), ct);
        }
        else if (File.Exists(full))
            AddFile(
                Path.GetDirectoryName(full)!,
                full,
                Path.GetFileName(full),
                RealPath(full),
                FileContents.Recognise(full)
            );
        else
            missing.Add((path, "There is no such file or folder; check the path."));
    }

    private void Walk(string root, string folder, string prefix, string realFolder, CancellationToken ct)
    {
        ct.ThrowIfCancellationRequested();
        if (!visitedFolders.Add(realFolder))
            return; // a link back to a folder already visited
        foreach (FileSystemInfo entry in Entries(folder, prefix))
        {
            if (FileNames.IsHiddenOrTemporary(entry.Name) || entry.Attributes.HasFlag(FileAttributes.Hidden))
                continue;
            string name = prefix + entry.Name;
            string real = entry.LinkTarget is null ? Path.Combine(realFolder, entry.Name) : RealPath(entry.FullName);
            if (Directory.Exists(entry.FullName))
                Walk(root, entry.FullName, name + "/", real, ct);
            else
                AddOrPassOver(root, entry.FullName, name, real);
        }
    }

    private List<FileSystemInfo> Entries(string folder, string prefix)
    {
        try
        {
            List<FileSystemInfo> entries = [.. new DirectoryInfo(folder).EnumerateFileSystemInfos()];
            entries.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
            return entries;
        }
        catch (Exception problem) when (problem is UnauthorizedAccessException or IOException or SecurityException)
        {
            string name = prefix.Length > 0 ? prefix.TrimEnd('/') : folder;
            findings.Add(
                new Finding(
                    FindingCodes.FolderUnreadable,
                    Severity.Warning,
                    $"The folder {name} cannot be opened; its frames are left out. Check its permissions, or copy "
                        + "it to another place.",
                    [name]
                )
            );
            return [];
        }
    }

    private void AddOrPassOver(string root, string path, string name, string real)
    {
        FileContent content = FileContents.Recognise(path);
        // a picture under the name of a raw file is left out by name: its owner believes it to be a frame
        bool isFalseRaw =
            content is FileContent.Jpeg or FileContent.Picture or FileContent.Film && FileNames.IsRawTiff(name);
        if (
            isFalseRaw
            || content is FileContent.Fits or FileContent.Tiff or FileContent.MakersRaw or FileContent.LayeredRaw
        )
            AddFile(root, path, name, real, content);
        else
        {
            (FileContent, string) kind = (content, FileContents.Ending(content, name));
            passedOver[kind] = passedOver.GetValueOrDefault(kind) + 1;
        }
    }

    private void AddFile(string root, string path, string name, string real, FileContent content)
    {
        if (firstNameOf.TryAdd(real, name))
            found.Add((root, new ScannedFile(path, FileNames.Normalise(name), content)));
        else
            repeatedNames.Add(FileNames.Normalise(name));
    }

    /// <summary>
    /// The path with all its links resolved; unchanged where a link leads nowhere or in a circle.
    /// </summary>
    private static string RealPath(string path)
    {
        try
        {
            string? parent = Path.GetDirectoryName(path);
            if (parent is null)
                return path;
            string here = Path.Combine(RealPath(parent), Path.GetFileName(path));
            FileSystemInfo info = Directory.Exists(here) ? new DirectoryInfo(here) : new FileInfo(here);
            return info.ResolveLinkTarget(returnFinalTarget: true) is { } target ? RealPath(target.FullName) : here;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return path;
        }
    }
}
