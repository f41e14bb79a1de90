using SensorProfile.Reporting.Answers;

namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A small table for reading; tables for computing are the CSV files.</summary>
/// <param name="Header">Column heads.</param>
/// <param name="Rows">Cells as printed, as many as there are heads.</param>
/// <param name="Widths">Shares of the width, one for each column.</param>
internal sealed record TableBlock(
    IReadOnlyList<string> Header,
    IReadOnlyList<IReadOnlyList<string>> Rows,
    IReadOnlyList<double> Widths
) : Block
{
    /// <summary>The table of an answer, laid out once for terminal and page.</summary>
    /// <param name="table">The table; heads of number columns begin with ">" and are adjacent.</param>
    /// <param name="widths">Shares of the width, one for each column.</param>
    public static TableBlock Of(AnswerTable table, params IReadOnlyList<double> widths)
    {
        int[] numbers = [.. Enumerable.Range(0, table.Columns.Count).Where(i => table.Columns[i].StartsWith('>'))];
        return new([.. table.Columns.Select(c => c.TrimStart('>'))], table.Rows, widths)
        {
            FirstNumberColumn = numbers.FirstOrDefault(int.MaxValue),
            LastNumberColumn = numbers.LastOrDefault(int.MaxValue),
        };
    }

    /// <summary>
    /// Index of the first column of numbers: it and those after it are right-aligned, up to
    /// <see cref="LastNumberColumn"/>.
    /// </summary>
    public int FirstNumberColumn { get; init; } = int.MaxValue;

    /// <summary>Index of the last column of numbers.</summary>
    public int LastNumberColumn { get; init; } = int.MaxValue;

    /// <summary>Whether the cells of a column are numbers, hence right-aligned.</summary>
    public bool IsNumber(int column) => column >= FirstNumberColumn && column <= LastNumberColumn;
}
