using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.InteropServices;

namespace SensorProfile.Fits.Bytes;

/// <summary>
/// The ones'-complement sum of 32-bit words used by DATASUM and CHECKSUM, and its ASCII form (FITS 4.0 §4.4.2.7 and
/// appendix J).
/// </summary>
internal static class Checksum
{
    /// <summary>Length of the ASCII form, bytes.</summary>
    public const int EncodedLength = 16;

    /// <summary>Adds bytes to a sum.</summary>
    /// <remarks>
    /// Rotating a word by 16 bits commutes with a ones'-complement sum: on a little-endian machine it is enough to swap
    /// the bytes of each half and rotate the result. Carries collect in 64-bit lanes and are added at the end.
    /// </remarks>
    /// <param name="sum">Sum so far; 0 to begin.</param>
    /// <param name="bytes">Big-endian words; an incomplete last word is padded with zeros.</param>
    public static uint Add(uint sum, ReadOnlySpan<byte> bytes)
    {
        int done = 0;
        if (Vector.IsHardwareAccelerated && BitConverter.IsLittleEndian)
        {
            done = bytes.Length / Vector<byte>.Count * Vector<byte>.Count;
            sum = Fold(
                sum + (ulong)uint.RotateLeft(SumOfTurnedWords(MemoryMarshal.Cast<byte, ushort>(bytes[..done])), 16)
            );
        }

        sum = AddScalar(sum, bytes[done..]);
        int rest = bytes.Length % 4;
        if (rest == 0)
            return sum;
        Span<byte> last = stackalloc byte[4];
        last.Clear();
        bytes[^rest..].CopyTo(last);
        return AddScalar(sum, last);
    }

    private static uint SumOfTurnedWords(ReadOnlySpan<ushort> halves)
    {
        Vector<ulong> low = default,
            high = default;
        for (; halves.Length > 0; halves = halves[Vector<ushort>.Count..])
        {
            var half = new Vector<ushort>(halves);
            Vector.Widen(Vector.AsVectorUInt32((half << 8) | (half >>> 8)), out Vector<ulong> a, out Vector<ulong> b);
            low += a;
            high += b;
        }

        return Fold(Vector.Sum(low) + Vector.Sum(high)); // below 2⁶¹: a span holds fewer than 2²⁹ words
    }

    /// <summary>The definition, word by word: add with end-around carry.</summary>
    internal static uint AddScalar(uint sum, ReadOnlySpan<byte> bytes)
    {
        for (; bytes.Length >= 4; bytes = bytes[4..])
        {
            ulong total = (ulong)sum + BinaryPrimitives.ReadUInt32BigEndian(bytes);
            sum = (uint)total + (uint)(total >> 32);
        }

        return sum;
    }

    /// <summary>
    /// The ASCII form of a sum: its complement in 16 letters and digits, arranged for a string that starts in column
    /// 12.
    /// </summary>
    /// <param name="sum">Sum of the HDU with CHECKSUM set to sixteen zeros.</param>
    public static string Encode(uint sum) => EncodeComplemented(~sum);

    /// <summary>The ASCII form of a word that is already complemented.</summary>
    internal static string EncodeComplemented(uint word)
    {
        Span<char> letters = stackalloc char[EncodedLength];
        Span<int> digits = stackalloc int[4];
        for (int i = 0; i < 4; i++)
        {
            int value = (int)(word >> (24 - (8 * i))) & 0xFF;
            digits.Fill((value / 4) + '0');
            digits[0] += value % 4;
            AvoidPunctuation(digits);
            // rotated by one, because the string starts in column 12
            for (int j = 0; j < 4; j++)
                letters[((4 * j) + i + 1) % EncodedLength] = (char)digits[j];
        }

        return new string(letters);
    }

    /// <summary>
    /// Moves pairs apart, one up and one down, until every character is a letter or a digit; the sum of each pair
    /// stays.
    /// </summary>
    private static void AvoidPunctuation(Span<int> digits)
    {
        bool moved = true;
        while (moved)
        {
            moved = false;
            for (int j = 0; j < 4; j += 2)
            {
                if (char.IsAsciiLetterOrDigit((char)digits[j]) && char.IsAsciiLetterOrDigit((char)digits[j + 1]))
                    continue;
                digits[j]++;
                digits[j + 1]--;
                moved = true;
            }
        }
    }

    private static uint Fold(ulong total)
    {
        while (total > uint.MaxValue)
            total = (total & uint.MaxValue) + (total >> 32);
        return (uint)total;
    }
}
