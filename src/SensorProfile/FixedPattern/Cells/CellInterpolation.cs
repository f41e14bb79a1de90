namespace SensorProfile.FixedPattern.Cells;

/// <summary>
/// Values of coarse cells at every pixel: linear interpolation between the cell centres, extrapolated to the edge of
/// the frame.
/// </summary>
/// <param name="grid">The cells.</param>
/// <param name="values">One per cell.</param>
/// <param name="width">Frame width, px.</param>
/// <param name="height">Frame height, px.</param>
internal sealed class CellInterpolation(CellGrid grid, double[] values, int width, int height)
{
    /// <summary>Value at a pixel.</summary>
    public double At(int column, int row)
    {
        (int top, double down) = Place(row, grid.Rows, height);
        (int left, double right) = Place(column, grid.Columns, width);
        int at = top * grid.Columns + left,
            below = grid.Rows > 1 ? grid.Columns : 0,
            beside = grid.Columns > 1 ? 1 : 0;
        double upper = values[at] + right * (values[at + beside] - values[at]),
            lower = values[at + below] + right * (values[at + below + beside] - values[at + below]);
        return upper + down * (lower - upper);
    }

    /// <summary>
    /// The cell before a pixel, and the position of the pixel on the way to the next centre; below 0 or above 1 beyond
    /// the outermost centres.
    /// </summary>
    private (int Cell, double Share) Place(int pixel, int cells, int length)
    {
        if (cells < 2)
            return (0, 0);
        int cell = Math.Clamp((int)Math.Floor((pixel - (grid.Size - 1) / 2.0) / grid.Size), 0, cells - 2);
        return (cell, (pixel - Centre(cell, length)) / (Centre(cell + 1, length) - Centre(cell, length)));
    }

    private double Centre(int cell, int length) =>
        (cell * grid.Size + Math.Min(length, (cell + 1) * grid.Size) - 1) / 2.0;
}
