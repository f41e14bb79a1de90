namespace SensorProfile.Drift.Patches;

/// <summary>Counts of points per cell as running sums, so that any window is counted with four look-ups.</summary>
internal sealed class ScanGrid
{
    private static readonly int[] Sizes = [1, 2, 3, 4, 6, 8, 12]; // sides of the windows, in cells

    private readonly int cell,
        columns,
        rows;
    private readonly int[] sums;

    public ScanGrid(int width, int height, int cell)
    {
        (Width, Height, this.cell) = (width, height, cell);
        // the last cell of a row may be smaller
        (columns, rows) = ((width + cell - 1) / cell, (height + cell - 1) / cell);
        sums = new int[(columns + 1) * (rows + 1)];
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>The window with the largest likelihood ratio; the first of equals.</summary>
    public ScanWindow Densest(IReadOnlyList<OutlinePoint> points)
    {
        Fill(points);
        ScanWindow best = default;
        foreach (int size in Sizes.Where(s => s <= Math.Min(columns, rows)))
            for (int y = 0; y + size <= rows; y++)
            for (int x = 0; x + size <= columns; x++)
            {
                int count = Sum(x, y, size);
                if (count < 2)
                    continue;
                (int right, int bottom) = (Math.Min((x + size) * cell, Width), Math.Min((y + size) * cell, Height));
                double expected =
                    (double)points.Count * (right - x * cell) * (bottom - y * cell) / ((double)Width * Height);
                double ratio = Ratio(count, points.Count, expected);
                if (ratio > best.Ratio)
                    best = new ScanWindow(x * cell, y * cell, right - x * cell, bottom - y * cell, count, ratio);
            }
        return best;
    }

    internal static double Ratio(int count, int all, double expected)
    {
        if (count <= expected)
            return 0;
        double outside = all - count;
        return count * Math.Log(count / expected) + (outside > 0 ? outside * Math.Log(outside / (all - expected)) : 0);
    }

    private void Fill(IReadOnlyList<OutlinePoint> points)
    {
        Array.Clear(sums);
        for (int i = 0; i < points.Count; i++)
            sums[((points[i].Y - 1) / cell + 1) * (columns + 1) + (points[i].X - 1) / cell + 1]++;
        for (int y = 1; y <= rows; y++)
        for (int x = 1; x <= columns; x++)
            sums[y * (columns + 1) + x] +=
                sums[y * (columns + 1) + x - 1]
                + sums[(y - 1) * (columns + 1) + x]
                - sums[(y - 1) * (columns + 1) + x - 1];
    }

    private int Sum(int x, int y, int size)
    {
        int top = y * (columns + 1),
            bottom = (y + size) * (columns + 1);
        return sums[bottom + x + size] - sums[bottom + x] - sums[top + x + size] + sums[top + x];
    }
}
