using System.Globalization;
using System.Runtime.InteropServices;
using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// Decodes one row of the tile table to the stored numbers of a tile, in machine byte order.
/// </summary>
internal sealed class TileDecoder
{
    private const long PixelsAlwaysAllowed = 1 << 20;
    private const long PixelsPerPackedByte = 20_000; // beyond any real tile: a run of 4095 pixels takes two bytes

    private readonly FitsLocation location;
    private readonly TileTable table;
    private readonly TileGrid grid;
    private readonly TileParameters parameters;
    private readonly TileColumn? compressed,
        gzip,
        uncompressed;

    public TileDecoder(FitsLocation location, TileTable table, TileGrid grid, TileParameters parameters)
    {
        (this.location, this.table, this.grid, this.parameters) = (location, table, grid, parameters);
        (compressed, gzip, uncompressed) = (
            table.Column("COMPRESSED_DATA"),
            table.Column("GZIP_COMPRESSED_DATA"),
            table.Column("UNCOMPRESSED_DATA")
        );
    }

    /// <summary>Unpacks a tile.</summary>
    /// <exception cref="FitsFormatException">The bytes of the tile are damaged.</exception>
    public byte[] Decode(int tile)
    {
        byte[] row = table.ReadRow(tile);
        int[] shape = grid.ShapeOf(tile);
        long pixels = 1;
        foreach (int length in shape)
            pixels *= length;
        try
        {
            if (compressed is not null && table.ReadHeap(row, compressed) is { Length: > 0 } packed)
                return Unpack(packed, row, tile, shape, Allowed(pixels, packed));
            if (gzip is not null && table.ReadHeap(row, gzip) is { Length: > 0 } archive)
                return Numbers(GzipCodec.Decode(archive, Allowed(pixels, archive), false, out int bytes), bytes);
            if (uncompressed is not null && table.ReadHeap(row, uncompressed) is { Length: > 0 } plain)
                return Plain(plain, pixels);
            throw new InvalidDataException("it has no bytes");
        }
        catch (InvalidDataException e)
        {
            throw new FitsFormatException(
                location,
                string.Create(CultureInfo.InvariantCulture, $"tile {tile + 1} cannot be unpacked: {e.Message}."),
                "Copy the file again from its origin, or leave it out.",
                e
            );
        }
    }

    private static int Allowed(long pixels, byte[] packed) =>
        pixels <= PixelsAlwaysAllowed
        || pixels <= PixelsPerPackedByte * packed.Length && pixels <= Array.MaxLength / sizeof(double)
            ? (int)pixels
            : throw new InvalidDataException($"{packed.Length} bytes do not make {pixels} pixels");

    private byte[] Unpack(byte[] packed, byte[] row, int tile, int[] shape, int pixels)
    {
        if (parameters.Compression == TileCompression.None)
            return Plain(packed, pixels);
        if (parameters.Compression is TileCompression.Gzip or TileCompression.ShuffledGzip)
        {
            byte[] bigEndian = GzipCodec.Decode(
                packed,
                pixels,
                parameters.Compression == TileCompression.ShuffledGzip,
                out int bytes
            );
            return parameters.Quantised ? Floats(Integers(bigEndian, bytes), row, tile) : Numbers(bigEndian, bytes);
        }

        var integers = new int[pixels];
        switch (parameters.Compression)
        {
            case TileCompression.Rice:
                RiceCodec.Decode(packed, parameters.RiceBlockSize, parameters.RiceBytesPerPixel, integers);
                break;
            case TileCompression.Plio:
                PlioCodec.Decode(packed, integers);
                break;
            default:
                HcompressCodec.Decode(packed, shape[0], pixels / shape[0], integers);
                break;
        }

        return parameters.Quantised ? Floats(integers, row, tile) : Narrow(integers);
    }

    private byte[] Plain(byte[] bigEndian, long pixels) =>
        bigEndian.Length == pixels * parameters.ElementBytes
            ? Numbers(bigEndian, parameters.ElementBytes)
            : throw new InvalidDataException($"{bigEndian.Length} bytes do not make {pixels} numbers");

    /// <summary>Converts big-endian numbers of any width to stored numbers.</summary>
    private byte[] Numbers(byte[] bigEndian, int elementBytes)
    {
        if (elementBytes != parameters.ElementBytes)
            return parameters.Bitpix > 0
                ? Narrow(Integers(bigEndian, elementBytes))
                : throw new InvalidDataException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"numbers of {elementBytes} bytes do not belong into an image of BITPIX {parameters.Bitpix}"
                    )
                );
        ByteOrder.FromBigEndian(bigEndian, elementBytes, false);
        return bigEndian;
    }

    private static int[] Integers(byte[] bigEndian, int elementBytes)
    {
        if (elementBytes > 4)
            throw new InvalidDataException("64-bit numbers do not belong here");
        ByteOrder.FromBigEndian(bigEndian, elementBytes, false);
        var integers = new int[bigEndian.Length / elementBytes];
        for (int i = 0; i < integers.Length; i++)
        {
            integers[i] = elementBytes switch
            {
                1 => bigEndian[i],
                2 => MemoryMarshal.Cast<byte, short>(bigEndian.AsSpan())[i],
                _ => MemoryMarshal.Cast<byte, int>(bigEndian.AsSpan())[i],
            };
        }

        return integers;
    }

    /// <summary>Converts integers to stored numbers of BITPIX; if one does not fit, the tile is damaged.</summary>
    private byte[] Narrow(int[] integers)
    {
        var stored = new byte[(long)integers.Length * parameters.ElementBytes];
        int misfit = parameters.Bitpix switch
        {
            8 => PixelConversion.Convert<int, byte>(integers, stored),
            16 => PixelConversion.Convert<int, short>(integers, MemoryMarshal.Cast<byte, short>(stored.AsSpan())),
            32 => PixelConversion.Convert<int, int>(integers, MemoryMarshal.Cast<byte, int>(stored.AsSpan())),
            _ => PixelConversion.Convert<int, long>(integers, MemoryMarshal.Cast<byte, long>(stored.AsSpan())),
        };
        return misfit < 0
            ? stored
            : throw new InvalidDataException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{integers[misfit]} does not fit into BITPIX {parameters.Bitpix}"
                )
            );
    }

    private byte[] Floats(int[] integers, byte[] row, int tile)
    {
        var values = new double[integers.Length];
        double scale = parameters.Scale.Of(row),
            zero = parameters.Zero.Of(row),
            blank = parameters.Blank.Of(row);
        Dequantizer.Decode(
            integers,
            values,
            scale,
            zero,
            double.IsNaN(blank) ? null : (long)blank,
            parameters.Dither,
            tile + parameters.DitherSeed - 1
        );
        var stored = new byte[(long)values.Length * parameters.ElementBytes];
        if (parameters.Bitpix == -64)
            values.CopyTo(MemoryMarshal.Cast<byte, double>(stored.AsSpan()));
        else
            for (int i = 0; i < values.Length; i++)
                MemoryMarshal.Cast<byte, float>(stored.AsSpan())[i] = (float)values[i];
        return stored;
    }
}
