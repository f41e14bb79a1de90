using SensorProfile.Fits.Tiles;

namespace SensorProfile.Fits.Tests.Tiles;

public sealed class TileGridTests
{
    /// <summary>Against a walk over every pixel of every tile.</summary>
    [Fact]
    public void EveryPixelOfACubeIsFoundInItsTile()
    {
        var grid = new TileGrid([7, 5, 3], [3, 2, 2]);
        var expected = new Dictionary<long, (int Tile, int Offset)>();
        for (int tile = 0; tile < grid.Count(0) * grid.Count(1) * grid.Count(2); tile++)
        {
            int[] shape = grid.ShapeOf(tile);
            long x0 = tile % 3 * 3,
                y0 = tile / 3 % 3 * 2,
                z0 = tile / 9 * 2;
            int offset = 0;
            for (int z = 0; z < shape[2]; z++)
            for (int y = 0; y < shape[1]; y++)
            for (int x = 0; x < shape[0]; x++)
                expected[x0 + x + (7 * (y0 + y + (5 * (z0 + z))))] = (tile, offset++);
        }

        Assert.Equal(7 * 5 * 3, expected.Count);
        foreach (var (pixel, (tile, offset)) in expected)
        {
            var found = grid.Find(pixel);
            Assert.Equal((tile, offset), (found.Tile, found.Offset));
            Assert.Equal(Math.Min(3 - (pixel % 7 % 3), 7 - (pixel % 7)), found.Run);
        }
    }
}
