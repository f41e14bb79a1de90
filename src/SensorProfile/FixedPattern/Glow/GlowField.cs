using SensorProfile.FixedPattern.Cells;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>
/// Glow of every pixel, computed from coarse cells on demand, to avoid another map of the whole sensor in memory.
/// </summary>
/// <param name="grid">The cells.</param>
/// <param name="excess">Excess of every cell above the floor, e-/px/s.</param>
/// <param name="glows">Cells that belong to a glow.</param>
/// <param name="width">Frame width, px.</param> <param name="height">Frame height, px.</param>
internal sealed class GlowField(CellGrid grid, double[] excess, bool[] glows, int width, int height)
{
    private readonly CellInterpolation smooth = new(grid, excess, width, height);

    /// <summary>Pixels of the frame.</summary>
    public int Pixels => width * height;

    /// <summary>Cell of a pixel.</summary>
    public int CellOf(int pixel) => grid.IndexOf(pixel % width, pixel / width);

    /// <summary>Rate above the floor at the reference temperature, e-/px/s; 0 where nothing glows.</summary>
    /// <param name="pixel">Index in the frame, row by row.</param>
    public float At(int pixel) =>
        glows[CellOf(pixel)] ? (float)Math.Max(0, smooth.At(pixel % width, pixel / width)) : 0;

    /// <summary>Map of the glow of all pixels.</summary>
    public float[] Map()
    {
        float[] map = new float[Pixels];
        Parallel.For(0, height, row =>
        {
            for (int pixel = row * width; pixel < (row + 1) * width; pixel++)
                map[pixel] = At(pixel);
        });
        return map;
    }
}
