using System.IO.Compression;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// GZIP_1 and GZIP_2 (FITS 4.0 §10.4.2): big-endian numbers, plain or shuffled by byte, packed with gzip.
/// </summary>
internal static class GzipCodec
{
    private const int WidestNumber = 8;

    /// <summary>Unpacks a tile into big-endian numbers.</summary>
    /// <param name="packed">A gzip archive.</param>
    /// <param name="pixels">Number of pixels in the tile.</param>
    /// <param name="shuffled">Whether the bytes are shuffled (GZIP_2).</param>
    /// <param name="elementBytes">Bytes per number: 1, 2, 4 or 8, inferred from the length.</param>
    /// <exception cref="InvalidDataException">The archive is damaged or does not hold the numbers of this
    /// tile.</exception>
    public static byte[] Decode(ReadOnlySpan<byte> packed, int pixels, bool shuffled, out int elementBytes)
    {
        byte[] unpacked = Unpack(packed, (long)pixels * WidestNumber);
        elementBytes = unpacked.Length / pixels;
        if (elementBytes * pixels != unpacked.Length || elementBytes is not (1 or 2 or 4 or 8))
            throw new InvalidDataException($"{unpacked.Length} unpacked bytes do not make {pixels} numbers");
        return shuffled ? Unshuffle(unpacked, elementBytes) : unpacked;
    }

    private static byte[] Unpack(ReadOnlySpan<byte> packed, long most)
    {
        using var source = new MemoryStream(packed.ToArray());
        using var unpacker = new GZipStream(source, CompressionMode.Decompress);
        using var unpacked = new MemoryStream();
        Span<byte> step = stackalloc byte[1 << 14];
        while (unpacker.Read(step) is > 0 and var read)
        {
            unpacked.Write(step[..read]);
            if (unpacked.Length > most)
                throw new InvalidDataException("the tile unpacks to more than it can hold");
        }

        return unpacked.ToArray();
    }

    private static byte[] Unshuffle(byte[] sorted, int elementBytes)
    {
        int pixels = sorted.Length / elementBytes;
        var numbers = new byte[sorted.Length];
        for (int place = 0; place < elementBytes; place++)
        {
            ReadOnlySpan<byte> plane = sorted.AsSpan(place * pixels, pixels);
            for (int i = 0; i < plane.Length; i++)
                numbers[(i * elementBytes) + place] = plane[i];
        }

        return numbers;
    }
}
