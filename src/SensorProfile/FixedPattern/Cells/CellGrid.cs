namespace SensorProfile.FixedPattern.Cells;

/// <summary>Divides the frame into coarse square cells.</summary>
/// <param name="Size">Side of a cell, px; even, so that every cell contains whole periods of a colour filter.</param>
/// <param name="Columns">Number of columns of cells; the last may be narrower.</param>
/// <param name="Rows">Number of rows of cells.</param>
internal sealed record CellGrid(int Size, int Columns, int Rows)
{
    private const int MaxAcross = 96;
    private const int MinSize = 8;

    /// <summary>Number of cells, <see cref="Columns"/> × <see cref="Rows"/>.</summary>
    public int Count => Columns * Rows;

    /// <summary>Makes the grid for a frame, at most 96 cells across.</summary>
    public static CellGrid For(int width, int height)
    {
        int size = Math.Max(MinSize, (Math.Max(width, height) + MaxAcross - 1) / MaxAcross);
        size += size % 2;
        return new(size, (width + size - 1) / size, (height + size - 1) / size);
    }

    /// <summary>Index of the cell of a pixel.</summary>
    public int IndexOf(int column, int row) => row / Size * Columns + column / Size;

    /// <summary>Mean over a cell and its neighbours, and the number of cells used.</summary>
    public (double Value, int Cells) Smoothed(double[] values, int cell)
    {
        int row = cell / Columns,
            column = cell % Columns,
            n = 0;
        double sum = 0;
        for (int y = Math.Max(0, row - 1); y <= Math.Min(Rows - 1, row + 1); y++)
        for (int x = Math.Max(0, column - 1); x <= Math.Min(Columns - 1, column + 1); x++)
            if (double.IsFinite(values[y * Columns + x]))
            {
                sum += values[y * Columns + x];
                n++;
            }
        return (n == 0 ? double.NaN : sum / n, n);
    }
}
