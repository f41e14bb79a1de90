using System.Buffers.Binary;
using System.Numerics;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// HCOMPRESS_1 (FITS 4.0 §10.4.4): a two-dimensional Haar transform whose coefficients are coded bit plane by bit plane
/// as quadtrees.
/// </summary>
internal static class HcompressCodec
{
    private const int HeaderBytes = 14,
        PlanesAt = 22,
        CodeAt = 25;
    private const int MaxPlanes = 62;

    /// <summary>Unpacks a tile.</summary>
    /// <param name="packed">Magic number, size, scale, sum, number of bit planes, quadtrees, signs.</param>
    /// <param name="width">Width of the tile.</param>
    /// <param name="height">Height of the tile.</param>
    /// <param name="pixels">Buffer for the tile.</param>
    /// <exception cref="InvalidDataException">The bytes are not such a tile.</exception>
    public static void Decode(ReadOnlySpan<byte> packed, int width, int height, Span<int> pixels)
    {
        if (packed.Length < CodeAt || packed[0] != 0xDD || packed[1] != 0x99)
            throw new InvalidDataException("the tile does not begin with the HCOMPRESS magic number");
        int rows = BinaryPrimitives.ReadInt32BigEndian(packed[2..]),
            columns = BinaryPrimitives.ReadInt32BigEndian(packed[6..]);
        if (rows != height || columns != width)
            throw new InvalidDataException($"the tile says {columns} × {rows} pixels where {width} × {height} belong");
        long scale = BinaryPrimitives.ReadInt32BigEndian(packed[10..]);
        var coefficients = new long[pixels.Length];
        ReadCoefficients(packed, coefficients, rows, columns);
        coefficients[0] = BinaryPrimitives.ReadInt64BigEndian(packed[HeaderBytes..]);
        if (scale > 1)
        {
            foreach (ref long coefficient in coefficients.AsSpan())
                coefficient *= scale;
        }

        InverseHaar.Apply(coefficients, rows, columns);
        for (int i = 0; i < pixels.Length; i++)
            pixels[i] = (int)coefficients[i];
    }

    private static void ReadCoefficients(ReadOnlySpan<byte> packed, long[] coefficients, int rows, int columns)
    {
        int upper = (rows + 1) / 2,
            left = (columns + 1) / 2;
        ReadOnlySpan<byte> planes = packed.Slice(PlanesAt, 3);
        if (planes.ContainsAnyExceptInRange((byte)0, (byte)MaxPlanes))
            throw new InvalidDataException("the number of bit planes is impossible");
        var reader = new BitReader(packed[CodeAt..]);
        Quadtree.Read(ref reader, coefficients, columns, upper, left, planes[0]);
        Quadtree.Read(
            ref reader,
            coefficients.AsSpan(Math.Min(left, coefficients.Length)),
            columns,
            upper,
            columns / 2,
            planes[1]
        );
        Quadtree.Read(
            ref reader,
            coefficients.AsSpan(Math.Min(columns * upper, coefficients.Length)),
            columns,
            rows / 2,
            left,
            planes[1]
        );
        Quadtree.Read(
            ref reader,
            coefficients.AsSpan(Math.Min((columns * upper) + left, coefficients.Length)),
            columns,
            rows / 2,
            columns / 2,
            planes[2]
        );
        if (reader.Read(4) != 0)
            throw new InvalidDataException("the bit planes do not end where they should");
        reader.SkipToByte();
        foreach (ref long coefficient in coefficients.AsSpan())
        {
            if (coefficient != 0 && reader.Read(1) == 1)
                coefficient = -coefficient;
        }
    }

    /// <summary>Number of halvings that reduce a length to 1.</summary>
    internal static int Levels(int length) => length <= 1 ? 0 : BitOperations.Log2((uint)length - 1) + 1;
}
