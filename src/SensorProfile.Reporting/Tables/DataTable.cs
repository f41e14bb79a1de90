namespace SensorProfile.Reporting.Tables;

/// <summary>A table of numbers to compute with, written as one CSV file.</summary>
/// <param name="Name">File name without its extension.</param>
/// <param name="Columns">Column names with units, as in <c>exposure_s</c>.</param>
/// <param name="Rows">Numbers in full, text, or null for an empty field.</param>
internal sealed record DataTable(
    string Name,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<object?>> Rows
);
