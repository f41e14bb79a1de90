using SensorProfile.Fitting;

namespace SensorProfile.FixedPattern;

/// <summary>Columns (or rows) that stand out of their neighbours, whole or over a part of their length.</summary>
/// <remarks>The median of a column over all its length, halves and quarters, minus the median of the columns within 8 on either side. A column is a defect when that
/// exceeds 7 robust standard deviations of the same quantity over all columns, and the least excess asked for. Rows: the same with the map turned.</remarks>
internal static class LineDefects
{
    private const int Reach = 8;
    private const double Sigmas = 7;
    private static readonly int[] parts = [1, 2, 4];

    /// <summary>0-based numbers of the columns that stand out.</summary>
    /// <param name="map">Row after row; values that are not numbers are passed over.</param>
    /// <param name="width">px.</param> <param name="height">px.</param> <param name="least">Least excess, in the unit of the map.</param> <param name="rows">True for rows in place of columns.</param>
    public static IReadOnlyList<int> Find(float[] map, int width, int height, double least, bool rows = false)
    {
        (int lines, int length) = rows ? (height, width) : (width, height);
        var found = new SortedSet<int>();
        foreach (int count in parts)
        {
            if (length / count < 16 || lines < 2 * Reach) continue;
            for (int part = 0; part < count; part++)
                found.UnionWith(Outstanding(Medians(map, width, lines, part * length / count, (part + 1) * length / count, rows), least));
        }
        return [.. found];
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
            medians[line] = values.Count == 0 ? double.NaN : OrderStatistics.Median([.. values]);
        });
        return medians;
    }

    private static IEnumerable<int> Outstanding(double[] medians, double least)
    {
        double[] excess = new double[medians.Length];
        for (int i = 0; i < medians.Length; i++)
        {
            double[] around = [.. Enumerable.Range(Math.Max(0, i - Reach), Math.Min(medians.Length, i + Reach + 1) - Math.Max(0, i - Reach)).Where(k => k != i).Select(k => medians[k]).Where(double.IsFinite)];
            excess[i] = around.Length == 0 ? double.NaN : medians[i] - OrderStatistics.Median(around);
        }
        double[] known = [.. excess.Where(double.IsFinite)];
        double limit = known.Length == 0 ? double.NaN : Math.Max(least, Sigmas * OrderStatistics.MadSigma(known));
        return Enumerable.Range(0, excess.Length).Where(i => Math.Abs(excess[i]) > limit);
    }
}
