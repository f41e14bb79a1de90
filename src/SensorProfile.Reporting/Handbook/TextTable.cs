namespace SensorProfile.Reporting.Handbook;

/// <summary>A table as lines of text: columns as wide as their content where they fit, else wrapped.</summary>
internal static class TextTable
{
    private const int Gap = 2,
        Narrowest = 8;

    /// <summary>The lines; the first row is the heading.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<IReadOnlyList<string>> rows, TextColumn column)
    {
        int[] widths = Widths(rows, column.Width - column.Next.Length);
        for (int r = 0; r < rows.Count; r++)
        {
            string[][] cells = [.. rows[r].Select((cell, c) => TextColumn.Broken(cell, widths[c]).ToArray())];
            for (int line = 0; line < cells.Max(cell => cell.Length); line++)
                yield return column.Next
                    + string.Concat(
                            cells.Select(
                                (cell, c) =>
                                    cell.ElementAtOrDefault(line)?.PadRight(widths[c] + Gap)
                                    ?? new string(' ', widths[c] + Gap)
                            )
                        )
                        .TrimEnd();
            if (r == 0)
                yield return column.Next + string.Join(new string(' ', Gap), widths.Select(w => new string('-', w)));
        }
    }

    /// <summary>The widest column gives way until all fit, none below its longest word where that is possible.</summary>
    private static int[] Widths(IReadOnlyList<IReadOnlyList<string>> rows, int width)
    {
        int[] widths = [.. Enumerable.Range(0, rows[0].Count).Select(c => rows.Max(row => row[c].Length))];
        int[] least =
        [
            .. Enumerable
                .Range(0, rows[0].Count)
                .Select(c => Math.Max(Narrowest, rows.Max(row => row[c].Split(' ').Max(word => word.Length)))),
        ];
        while (widths.Sum() + (Gap * (widths.Length - 1)) > width)
        {
            int widest = Enumerable
                .Range(0, widths.Length)
                .Where(c => widths[c] > least[c])
                .DefaultIfEmpty(-1)
                .MaxBy(c => c < 0 ? 0 : widths[c]);
            if (widest < 0)
                break;
            widths[widest]--;
        }
        return widths;
    }
}
