namespace SensorProfile.Frames.Capture;

/// <summary>Matches rows of the capture table to files.</summary>
internal static class TableMatching
{
    /// <summary>One row (or null) per file, and findings about rows that match no file or several.</summary>
    /// <remarks>
    /// A row matches a file by its whole relative name, or else by the end of that name (folder by folder); each is
    /// tried case-sensitively first, then ignoring case.
    /// </remarks>
    public static (CaptureRow?[] Rows, IReadOnlyList<Finding> Findings) Match(
        IReadOnlyList<ScannedFile> files,
        CaptureTable? table
    )
    {
        CaptureRow?[] rows = new CaptureRow?[files.Count];
        if (table is null)
            return (rows, []);
        Index index = new(files);
        List<string> unmatched = [],
            ambiguous = [];
        foreach (CaptureRow row in table.Rows)
        {
            List<int> places = index.Find(row.File);
            if (places.Count == 0)
                unmatched.Add(Label(row));
            else if (places.Count > 1)
                ambiguous.Add($"{Label(row)} fits {Counted.Files(places.Count)}");
            else if (rows[places[0]] is { } earlier)
                ambiguous.Add($"{Label(row)} means the same file as {Label(earlier)}");
            else
                rows[places[0]] = row;
        }
        return (rows, [.. Tell(table.Name, unmatched, ambiguous)]);
    }

    private static IEnumerable<Finding> Tell(string table, List<string> unmatched, List<string> ambiguous)
    {
        if (unmatched.Count > 0)
            yield return new Finding(
                FindingCodes.CaptureTableNoFile,
                Severity.Warning,
                $"{Counted.Nouns(unmatched.Count, "row")} of {table} without a matching file among those given "
                    + $"({Counted.Some(unmatched)}): nothing was corrected; check the names in column file."
            );
        if (ambiguous.Count > 0)
            yield return new Finding(
                FindingCodes.CaptureTableAmbiguous,
                Severity.Warning,
                $"{Counted.Nouns(ambiguous.Count, "row")} of {table} not used because the file is ambiguous "
                    + $"({Counted.Some(ambiguous)}): write the name with its folders in column file, once."
            );
    }

    private static string Label(CaptureRow row) =>
        row.Line > 0
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {row.Line}: {row.File}")
            : row.File;

    private sealed class Index
    {
        private readonly IReadOnlyList<ScannedFile> files;
        private readonly ILookup<string, int> byBareName;

        public Index(IReadOnlyList<ScannedFile> files)
        {
            this.files = files;
            byBareName = Enumerable
                .Range(0, files.Count)
                .ToLookup(i => FileNames.BareName(files[i].Name), StringComparer.OrdinalIgnoreCase);
        }

        public List<int> Find(string name)
        {
            List<int> candidates = [.. byBareName[FileNames.BareName(name)]];
            string path = FileNames.Normalise(Path.IsPathRooted(name) ? Path.GetFullPath(name) : name);
            foreach (
                StringComparison comparison in (ReadOnlySpan<StringComparison>)
                    [StringComparison.Ordinal, StringComparison.OrdinalIgnoreCase]
            )
            {
                List<int> whole = candidates.FindAll(i =>
                    files[i].Name.Equals(path, comparison)
                    || FileNames.Normalise(files[i].Path).Equals(path, comparison)
                );
                if (whole.Count > 0)
                    return whole;
                List<int> end = candidates.FindAll(i => files[i].Name.EndsWith("/" + path, comparison));
                if (end.Count > 0)
                    return end;
            }
            return [];
        }
    }
}
