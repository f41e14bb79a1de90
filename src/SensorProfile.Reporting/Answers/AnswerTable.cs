namespace SensorProfile.Reporting.Answers;

/// <summary>A table of an answer.</summary>
/// <param name="Title">Heading above the table; empty for none.</param>
/// <param name="Columns">Headings; a heading that starts with '>' sets its column flush right.</param>
/// <param name="Rows">Cells, one per column.</param>
internal sealed record AnswerTable(
    string Title,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string>> Rows
)
{
    /// <summary>Whether the table says more than the numbers: it then takes precedence where space is short.</summary>
    public bool Leading { get; init; }

    /// <summary>A list of points under a title.</summary>
    public static AnswerTable List(string title, IEnumerable<string> points) =>
        new(title, ["", ""], [.. points.Select(p => (IReadOnlyList<string>)["-", p])]);

    /// <summary>The table without its empty columns.</summary>
    public AnswerTable WithoutEmptyColumns()
    {
        int[] kept = [.. Enumerable.Range(0, Columns.Count).Where(c => Rows.Any(row => row[c].Length > 0))];
        return kept.Length == Columns.Count
            ? this
            : this with
            {
                Columns = [.. kept.Select(c => Columns[c])],
                Rows = [.. Rows.Select(row => (IReadOnlyList<string>)[.. kept.Select(c => row[c])])],
            };
    }

    public bool HasHeadings => Columns.Any(c => c.TrimStart('>').Length > 0);

    public bool IsRight(int column) => Columns[column].StartsWith('>');

    public string Heading(int column) => Columns[column].TrimStart('>');
}
