namespace SensorProfile.Cli.Replies;

/// <summary>A table of an answer.</summary>
/// <param name="Title">Printed above it; empty for none.</param>
/// <param name="Columns">Headings; a heading that starts with '>' sets its column flush right.</param>
/// <param name="Rows">Cells, one per column.</param>
internal sealed record ReplyTable(string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    public bool IsRight(int column) => Columns[column].StartsWith('>');

    public string Heading(int column) => Columns[column].TrimStart('>');
}
