namespace SensorProfile.Fits.Tiles;

/// <summary>
/// RICE_1 (FITS 4.0 §10.4.1): differences of neighbours, mapped to non-negative numbers, in blocks that each have their
/// own number of uncoded low bits.
/// </summary>
internal static class RiceCodec
{
    /// <summary>Unpacks a tile.</summary>
    /// <param name="packed">The first pixel uncoded, then the blocks.</param>
    /// <param name="blockSize">Pixels per block.</param>
    /// <param name="bytesPerPixel">1, 2 or 4: width of the arithmetic.</param>
    /// <param name="pixels">Buffer for the tile; 8-bit numbers are unsigned, wider ones signed.</param>
    /// <exception cref="InvalidDataException">The bytes end too early.</exception>
    public static void Decode(ReadOnlySpan<byte> packed, int blockSize, int bytesPerPixel, Span<int> pixels)
    {
        (int splitBits, int plainMarker) = bytesPerPixel switch
        {
            1 => (3, 6),
            2 => (4, 14),
            _ => (5, 25),
        };
        int width = 8 * bytesPerPixel;
        var reader = new BitReader(packed);
        uint last = reader.Read(width);
        for (int start = 0; start < pixels.Length; start += blockSize)
        {
            Span<int> block = pixels.Slice(start, Math.Min(blockSize, pixels.Length - start));
            int split = (int)reader.Read(splitBits) - 1;
            foreach (ref int pixel in block)
            {
                uint folded =
                    split < 0 ? 0
                    : split == plainMarker ? reader.Read(width)
                    : ((uint)reader.ReadZeros() << split) | reader.Read(split);
                uint difference = (folded & 1) == 0 ? folded >> 1 : ~(folded >> 1);
                last += difference;
                pixel = bytesPerPixel switch
                {
                    1 => (byte)last,
                    2 => (short)last,
                    _ => (int)last,
                };
            }
        }
    }
}
