using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace SensorProfile.Cli.Printing;

/// <summary>
/// Tables as lines of text: aligned columns where they fit, one block per row where the terminal is too narrow.
/// </summary>
internal static class TableText
{
    private const int Gap = 2;
    private const int NarrowestLastColumn = 18;

    public static IEnumerable<string> Lines(AnswerTable whole, Paper paper)
    {
        AnswerTable table = whole.WithoutEmptyColumns();
        table = table with
        {
            Columns = [.. table.Columns.Select(paper.Line)],
            Rows = [.. table.Rows.Select(row => (IReadOnlyList<string>)[.. row.Select(paper.Line)])],
        };
        int width = paper.Width;
        int[] widths = [.. Enumerable.Range(0, table.Columns.Count).Select(c => WidthOf(table, c))];
        int natural = widths.Sum() + (Gap * widths.Length);
        int least = natural - Math.Max(0, widths[^1] - NarrowestLastColumn);
        return least <= width ? Aligned(table, Math.Min(width, natural + 1)) : Blocks(table, width);
    }

    /// <summary>A paragraph as lines no wider than the terminal.</summary>
    public static IReadOnlyList<string> Wrapped(string text, Paper paper)
    {
        string line = paper.Line(text);
        return line.Length <= paper.Width ? [line] : [.. Rendered(new Text(line), paper.Width)];
    }

    private static int WidthOf(AnswerTable table, int column) =>
        table.Rows.Select(r => r[column].Length).Append(table.Heading(column).Length).Max();

    private static IEnumerable<string> Aligned(AnswerTable table, int width)
    {
        int last = table.Columns.Count - 1;
        Grid grid = new();
        for (int c = 0; c <= last; c++)
            grid.AddColumn(
                new GridColumn
                {
                    Padding = new Padding(Gap, 0, 0, 0),
                    NoWrap = c < last,
                    Alignment = table.IsRight(c) ? Justify.Right : Justify.Left,
                }
            );
        if (table.HasHeadings)
            grid.AddRow([.. Enumerable.Range(0, last + 1).Select(c => new Text(table.Heading(c)))]);
        foreach (IReadOnlyList<string> row in table.Rows)
            grid.AddRow([.. row.Select(cell => new Text(cell))]);
        return Rendered(grid, width);
    }

    /// <summary>Lines without trailing blanks.</summary>
    private static IEnumerable<string> Rendered(IRenderable content, int width)
    {
        using StringWriter text = new() { NewLine = "\n" };
        ConsoleOutput.Create(text, isTerminal: false, width).Write(content);
        return text.ToString().TrimEnd('\n').Split('\n').Select(line => line.TrimEnd());
    }

    private static IEnumerable<string> Blocks(AnswerTable table, int width)
    {
        foreach (IReadOnlyList<string> row in table.Rows)
        foreach ((string text, bool first) in table.HasHeadings ? Headed(table, row) : Unheaded(row))
        foreach (
            string line in Rendered(new Padder(new Text(text), new Padding(first ? Gap : 2 * Gap, 0, 0, 0)), width)
        )
            yield return line;
    }

    private static IEnumerable<(string Text, bool First)> Headed(AnswerTable table, IReadOnlyList<string> row)
    {
        for (int c = 0; c < row.Count; c++)
            if (row[c].Length > 0)
                yield return (table.Heading(c).Length > 0 ? $"{table.Heading(c)}: {row[c]}" : row[c], c == 0);
    }

    /// <summary>"label: number unit", with its remark below.</summary>
    private static IEnumerable<(string Text, bool First)> Unheaded(IReadOnlyList<string> row)
    {
        yield return ($"{row[0]}: {string.Join(' ', row.Skip(1).Take(2).Where(cell => cell.Length > 0))}", true);
        foreach (string cell in row.Skip(3).Where(cell => cell.Length > 0))
            yield return (cell, false);
    }
}
