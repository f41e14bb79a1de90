namespace SensorProfile.Fits.Tiles;

/// <summary>
/// How an image is divided into tiles: numbered with the first axis fastest; the last tile of an axis may be shorter.
/// </summary>
/// <param name="Axes">ZNAXISn.</param>
/// <param name="Sizes">ZTILEn.</param>
internal sealed record TileGrid(long[] Axes, long[] Sizes)
{
    /// <summary>Tiles along an axis.</summary>
    public long Count(int axis) => (Axes[axis] + Sizes[axis] - 1) / Sizes[axis];

    /// <summary>Lengths of a tile along all axes.</summary>
    public int[] ShapeOf(int tile)
    {
        var shape = new int[Axes.Length];
        long rest = tile;
        for (int axis = 0; axis < shape.Length; axis++)
        {
            long place = rest % Count(axis);
            rest /= Count(axis);
            shape[axis] = (int)Math.Min(Sizes[axis], Axes[axis] - (place * Sizes[axis]));
        }

        return shape;
    }

    /// <summary>
    /// The tile that holds a pixel, the pixel's position in the tile, and how many pixels of its row remain in the
    /// tile, including itself.
    /// </summary>
    /// <param name="pixel">Index of the pixel in the image.</param>
    public (int Tile, int Offset, int Run) Find(long pixel)
    {
        long tile = 0,
            offset = 0,
            tiles = 1,
            pixels = 1,
            run = 0;
        for (int axis = 0; axis < Axes.Length; axis++)
        {
            long at = pixel % Axes[axis],
                place = at / Sizes[axis],
                inside = at % Sizes[axis];
            long length = Math.Min(Sizes[axis], Axes[axis] - (place * Sizes[axis]));
            if (axis == 0)
                run = length - inside;
            tile += place * tiles;
            offset += inside * pixels;
            tiles *= Count(axis);
            pixels *= length;
            pixel /= Axes[axis];
        }

        return ((int)tile, (int)offset, (int)run);
    }
}
