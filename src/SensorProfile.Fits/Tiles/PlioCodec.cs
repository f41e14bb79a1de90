using System.Buffers.Binary;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// PLIO_1 (FITS 4.0 §10.4.3): a list of 16-bit instructions that paint runs of zeros and of a current value; for masks.
/// </summary>
internal static class PlioCodec
{
    private const int ShortHeaderWords = 3;

    /// <summary>Unpacks a tile.</summary>
    /// <param name="packed">Big-endian words: a header, then instructions of 4 bits with 12 bits of data.</param>
    /// <param name="pixels">Buffer for the tile; pixels that the list does not paint are 0.</param>
    /// <exception cref="InvalidDataException">The bytes are not such a list.</exception>
    public static void Decode(ReadOnlySpan<byte> packed, Span<int> pixels)
    {
        pixels.Clear();
        if (packed.Length < 2 * ShortHeaderWords)
            throw new InvalidDataException("the list of line segments is too short");
        int length = Word(packed, 2),
            first = ShortHeaderWords;
        if (length <= 0)
            (length, first) = ((Word(packed, 4) << 15) + Word(packed, 3), Word(packed, 1));
        if (first < 0 || length < 0 || length > packed.Length / 2)
            throw new InvalidDataException("the list of line segments has no valid length");
        Paint(packed, first, length, pixels);
    }

    private static void Paint(ReadOnlySpan<byte> packed, int first, int length, Span<int> pixels)
    {
        int at = 0,
            value = 1;
        for (int i = first; i < length; i++)
        {
            int word = Word(packed, i),
                data = word & 0xFFF;
            switch ((word >> 12) & 7)
            {
                // zeros
                case 0:
                    Skip(pixels, ref at, data);
                    break;
                case 1:
                    value = (Word(packed, ++i) << 12) + data;
                    break; // sets the value
                case 2:
                    value += data;
                    break;
                case 3:
                    value -= data;
                    break;
                // a run of the value
                case 4:
                    Run(pixels, ref at, data, value);
                    break;
                // zeros, the last one replaced by the value
                case 5:
                    Skip(pixels, ref at, data - 1);
                    Run(pixels, ref at, Math.Min(data, 1), value);
                    break;
                case 6:
                    value += data;
                    Run(pixels, ref at, 1, value);
                    break;
                default:
                    value -= data;
                    Run(pixels, ref at, 1, value);
                    break;
            }
        }
    }

    private static void Skip(Span<int> pixels, ref int at, int count) =>
        at = Math.Min(at + Math.Max(count, 0), pixels.Length);

    private static void Run(Span<int> pixels, ref int at, int count, int value)
    {
        count = Math.Min(count, pixels.Length - at);
        pixels.Slice(at, count).Fill(value);
        at += count;
    }

    private static int Word(ReadOnlySpan<byte> packed, int index) =>
        index < packed.Length / 2
            ? BinaryPrimitives.ReadInt16BigEndian(packed[(2 * index)..])
            : throw new InvalidDataException("the list of line segments ends too early");
}
