using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>
/// Columns and rows that stand out from their neighbours over all, a half or a quarter of their length.
/// </summary>
/// <remarks>For each line, the part that stands out most clearly is reported; <see cref="LineOutliers"/>
/// decides.</remarks>
internal static class LineDefects
{
    private const int MinPixels = 16,
        LinesAtOnce = 16;
    private static readonly int[] parts = [1, 2, 4];

    /// <summary>
    /// Finds lines in a map of dark rates, by the median of each line, because many of its pixels may be hot or not
    /// measured.
    /// </summary>
    /// <param name="map">Dark rates row by row, e-/px/s; NaN is skipped.</param>
    /// <param name="width">px.</param>
    /// <param name="height">px.</param>
    /// <param name="least">Minimum excess, e-/px/s.</param>
    public static IEnumerable<DefectLine> InDark(float[] map, int width, int height, double least) =>
        Both(byRow =>
        {
            (int lines, int length) = byRow ? (height, width) : (width, height);
            (int From, int To) Extent(int count, int part) => (part * length / count, (part + 1) * length / count - 1);
            double[] Values(int count, int part) =>
                length / count < MinPixels ? [] : Medians(map, width, lines, Extent(count, part), byRow);
            return Clearest(Values, least)
                .Select(l =>
                {
                    (int from, int to) = Extent(l.Count, l.Part);
                    return new DefectLine(
                        Direction(byRow),
                        l.Line + 1,
                        from + 1,
                        to + 1,
                        PatternKind.Dark,
                        new(
                            l.Excess,
                            l.Sigma,
                            "e-/px/s",
                            to - from + 1,
                            "median of the line over that of the 8 lines on the nearer side"
                        )
                    );
                });
        });

    /// <summary>Finds lines in bias frames or flats, by the means in a line table.</summary>
    /// <param name="table">Means of the lines.</param>
    /// <param name="least">Minimum excess, in the unit of the table.</param>
    /// <param name="kind">Level or response.</param>
    /// <param name="factor">Factor from the unit of the table to that of the result.</param>
    /// <param name="unit">Unit of the result.</param>
    public static IEnumerable<DefectLine> InTable(
        LineTable table,
        double least,
        PatternKind kind,
        double factor,
        string unit
    ) =>
        Both(byRow =>
            Clearest((count, part) => table.Means(byRow, count, part), least)
                .Select(l =>
                {
                    (int from, int to) = table.Extent(byRow, l.Count, l.Part);
                    return new DefectLine(
                        Direction(byRow),
                        l.Line + 1,
                        from + 1,
                        to + 1,
                        kind,
                        new(
                            table.Excess(byRow, l.Line, from, to) * factor,
                            l.Sigma * factor,
                            unit,
                            to - from + 1,
                            "median of the line over that of the 8 lines on either side"
                        )
                    );
                })
        );

    /// <summary>A line, with the part of its length in which it stands out most clearly.</summary>
    private readonly record struct Outstanding(int Line, double Excess, double Sigma, int Count, int Part);

    private static List<Outstanding> Clearest(Func<int, int, double[]> values, double least)
    {
        var best = new SortedDictionary<int, Outstanding>();
        foreach (int count in parts)
            for (int part = 0; part < count; part++)
                foreach ((int line, double excess, double sigma) in LineOutliers.Find(values(count, part), least))
                    if (
                        !best.TryGetValue(line, out Outstanding known)
                        || Math.Abs(excess) / sigma > Math.Abs(known.Excess) / known.Sigma
                    )
                        best[line] = new(line, excess, sigma, count, part);
        return [.. best.Values];
    }

    private static IEnumerable<DefectLine> Both(Func<bool, IEnumerable<DefectLine>> find) =>
        find(false).Concat(find(true));

    private static LineDirection Direction(bool byRow) => byRow ? LineDirection.Row : LineDirection.Column;

    private static double[] Medians(float[] map, int width, int lines, (int From, int To) extent, bool byRow)
    {
        var medians = new double[lines];
        int length = extent.To - extent.From + 1;
        // a few columns at once, so that the map is read along its rows
        Parallel.For(
            0,
            (lines + LinesAtOnce - 1) / LinesAtOnce,
            () => GC.AllocateUninitializedArray<double>(LinesAtOnce * length),
            (block, _, values) =>
            {
                int first = block * LinesAtOnce,
                    count = Math.Min(LinesAtOnce, lines - first);
                Span<int> found = stackalloc int[count];
                for (int outer = 0; outer < (byRow ? count : length); outer++)
                {
                    ReadOnlySpan<float> read = byRow
                        ? map.AsSpan((first + outer) * width + extent.From, length)
                        : map.AsSpan((extent.From + outer) * width + first, count);
                    for (int inner = 0; inner < read.Length; inner++)
                    {
                        int line = byRow ? outer : inner;
                        if (!float.IsNaN(read[inner]))
                            values[line * length + found[line]++] = read[inner];
                    }
                }
                for (int line = 0; line < count; line++)
                    medians[first + line] =
                        found[line] == 0 ? 0 : OrderStatistics.MedianInPlace(values.AsSpan(line * length, found[line]));
                return values;
            },
            _ => { }
        );
        return medians;
    }
}
