namespace SensorProfile.Reporting.Views;

/// <summary>The files of a results folder that may be served, each by its name within the folder.</summary>
internal static class ResultFiles
{
    private static readonly string[] documents = ["card.html", "card.pdf", "report.html", "report.pdf", "profile.json"];

    /// <summary>Lists the files, with forward slashes; links that lead outside are skipped.</summary>
    public static IReadOnlyList<string> In(string folder) =>
        [
            .. documents.Where(name => File.Exists(Path.Combine(folder, name))),
            .. Below(folder, "tables", "*.csv"),
            .. Below(folder, "maps", "*.fits"),
        ];

    /// <summary>The path of a listed file; null for any other name, however crafted.</summary>
    public static string? Find(string folder, string name) =>
        In(folder).FirstOrDefault(file => string.Equals(file, name, StringComparison.Ordinal)) is { } known
            ? Path.Combine(folder, known)
            : null;

    private static IEnumerable<string> Below(string folder, string room, string pattern)
    {
        DirectoryInfo place = new(Path.Combine(folder, room));
        if (!place.Exists)
            return [];
        EnumerationOptions plain = new()
        {
            RecurseSubdirectories = true,
            AttributesToSkip = FileAttributes.ReparsePoint,
            IgnoreInaccessible = true,
        };
        return
        [
            .. place
                .EnumerateFiles(pattern, plain)
                .Select(file => Path.GetRelativePath(folder, file.FullName).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];
    }
}
