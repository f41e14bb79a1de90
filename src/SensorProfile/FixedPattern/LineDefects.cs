using SensorProfile.Fitting;
using SensorProfile.Profiles;

namespace SensorProfile.FixedPattern;

/// <summary>Columns (or rows) of the rate map that stand out of their neighbours, whole or over a part of their length.</summary>
/// <remarks>The median of a column over all its length, halves and quarters, judged by <see cref="LineOutliers"/>. Rows: the same with the map turned.</remarks>
internal static class LineDefects
{
    private const int FewestPixels = 16, FewestLines = 16;
    private static readonly int[] parts = [1, 2, 4];

    /// <summary>The columns that stand out, each with the part of its length that does so most clearly.</summary>
    /// <param name="map">Row after row; values that are not numbers are passed over.</param>
    /// <param name="width">px.</param> <param name="height">px.</param> <param name="least">Least excess, e-/px/s.</param> <param name="rows">True for rows in place of columns.</param>
    public static IReadOnlyList<DefectLine> Find(float[] map, int width, int height, double least, bool rows = false)
    {
        (int lines, int length) = rows ? (height, width) : (width, height);
        var found = new SortedDictionary<int, (double Excess, double Sigma, int From, int To)>();
        foreach (int count in parts)
        {
            if (length / count < FewestPixels || lines < FewestLines) continue;
            for (int part = 0; part < count; part++)
            {
                int from = part * length / count, to = (part + 1) * length / count;
                foreach ((int line, double excess, double sigma) in LineOutliers.Of(Medians(map, width, lines, from, to, rows), least))
                    if (!found.TryGetValue(line, out var known) || Math.Abs(excess) / sigma > Math.Abs(known.Excess) / known.Sigma) found[line] = (excess, sigma, from, to);
            }
        }
        return [.. found.Select(f => new DefectLine(rows ? "row" : "column", f.Key + 1, f.Value.From + 1, f.Value.To, "dark",
            new(f.Value.Excess, f.Value.Sigma, "e-/px/s", f.Value.To - f.Value.From, "median of the line over that of the 8 lines on the nearer side")))];
    }

    private static double[] Medians(float[] map, int width, int lines, int from, int to, bool rows)
    {
        var medians = new double[lines];
        Parallel.For(0, lines, line =>
        {
            var values = new List<double>(to - from);
            for (int k = from; k < to; k++)
            {
                float value = rows ? map[line * width + k] : map[k * width + line];
                if (!float.IsNaN(value)) values.Add(value);
            }
            medians[line] = values.Count == 0 ? 0 : OrderStatistics.MedianInPlace([.. values]);
        });
        return medians;
    }
}
