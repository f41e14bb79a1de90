using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits.Tiles;

/// <summary>An image stored as compressed tiles in a binary table (FITS 4.0 §10).</summary>
internal static class TileCompressedImage
{
    /// <summary>Makes the HDU after checking header and descriptors; no tile is unpacked.</summary>
    /// <exception cref="FitsFormatException">The header or a descriptor is wrong.</exception>
    public static FitsHdu Create(FileScan scan, HduExtent extent, FitsHeader header, HduLayout layout)
    {
        var table = new TileTable(scan, extent, header, layout);
        var parameters = new TileParameters(scan, header, table);
        TileGrid grid = ReadGrid(scan, header, table, parameters);
        if (grid.Axes.Length == 0)
            return new FitsHdu(extent, header, FitsHduKind.NoData, parameters.Bitpix, grid.Axes, null, null);
        PixelScaling scaling = PixelScaling.Read(scan, header, parameters.Bitpix);
        if (parameters is { Bitpix: > 0, Blank.Constant: var blank } && scaling.Blank is null && !double.IsNaN(blank))
            scaling = scaling with { Blank = (long)blank };
        var store = new TilePixelStore(
            new TileDecoder(extent.Location, table, grid, parameters),
            grid,
            parameters.ElementBytes
        );
        return new FitsHdu(extent, header, FitsHduKind.CompressedImage, parameters.Bitpix, grid.Axes, scaling, store);
    }

    private static TileGrid ReadGrid(FileScan scan, FitsHeader header, TileTable table, TileParameters parameters)
    {
        long count = Positive("ZNAXIS", header.Integer("ZNAXIS") ?? -1, 0, 999);
        var grid = new TileGrid(new long[count], new long[count]);
        long tiles = 1,
            pixels = 1;
        for (int i = 0; i < count; i++)
        {
            string keyword = $"ZNAXIS{i + 1}";
            grid.Axes[i] = Positive(keyword, header.Integer(keyword) ?? -1, 1, long.MaxValue);
            long usual = i == 0 ? grid.Axes[0] : 1;
            grid.Sizes[i] = Math.Min(
                grid.Axes[i],
                Positive($"ZTILE{i + 1}", header.Integer($"ZTILE{i + 1}") ?? usual, 1, long.MaxValue)
            );
            if (grid.Count(i) > table.Rows / tiles)
                throw Bad(keyword, $"an axis that {table.Rows} tiles can fill");
            tiles *= grid.Count(i);
            pixels =
                grid.Sizes[i] > int.MaxValue / pixels
                    ? throw Bad($"ZTILE{i + 1}", "a tile of fewer than 2147483648 pixels")
                    : pixels * grid.Sizes[i];
        }

        HduFactory.CheckAxes(scan, header, "ZNAXIS", grid.Axes);
        if (count > 0 && tiles != table.Rows)
            throw Bad("ZNAXIS", $"as many tiles as the table has rows: {table.Rows} rows, {tiles} tiles; axes");
        if (table.Column("COMPRESSED_DATA") is not { IsDescriptor: true })
            throw scan.Fault(
                "COMPRESSED_DATA",
                null,
                $"the table has no column of compressed tiles ({parameters.Compression})."
            );
        return grid;

        long Positive(string keyword, long value, long least, long most) =>
            value >= least && value <= most ? value : throw Bad(keyword, $"an integer of at least {least}");

        FitsFormatException Bad(string keyword, string expected) =>
            scan.Fault(
                keyword,
                header.Card(keyword)?.ByteOffset,
                $"expected {expected}, found '{header.Card(keyword)?.Value ?? "nothing"}'."
            );
    }
}
