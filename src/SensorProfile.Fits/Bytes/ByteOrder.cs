using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.InteropServices;

namespace SensorProfile.Fits.Bytes;

/// <summary>Converts the big-endian numbers of FITS to machine byte order and back.</summary>
/// <remarks>
/// Flipping the top bit adds 2ⁿ⁻¹ modulo 2ⁿ: it turns a stored signed number into the unsigned one meant by BZERO =
/// 2ⁿ⁻¹.
/// </remarks>
internal static class ByteOrder
{
    /// <summary>Big-endian to machine order, in place.</summary>
    /// <param name="numbers">Integers of <paramref name="elementBytes"/> bytes.</param>
    /// <param name="elementBytes">1, 2, 4 or 8.</param>
    /// <param name="flipTopBit">Whether to flip the top bit of each.</param>
    public static void FromBigEndian(Span<byte> numbers, int elementBytes, bool flipTopBit) =>
        Turn(numbers, numbers, elementBytes, flipTopBit ? 1UL << ((8 * elementBytes) - 1) : 0);

    /// <summary>Machine order to big-endian.</summary>
    /// <param name="numbers">Integers of <paramref name="elementBytes"/> bytes.</param>
    /// <param name="bigEndian">Buffer for as many bytes; may be the same memory.</param>
    /// <param name="elementBytes">1, 2, 4 or 8.</param>
    /// <param name="flipTopBit">Whether to flip the top bit of each.</param>
    public static void ToBigEndian(ReadOnlySpan<byte> numbers, Span<byte> bigEndian, int elementBytes, bool flipTopBit)
    {
        ulong topBitOfFirstByte = BitConverter.IsLittleEndian ? 0x80UL : 1UL << ((8 * elementBytes) - 1);
        Turn(numbers, bigEndian[..numbers.Length], elementBytes, flipTopBit ? topBitOfFirstByte : 0);
    }

    /// <summary>Flips the top bit of numbers in machine order.</summary>
    /// <param name="numbers">Integers of <paramref name="elementBytes"/> bytes.</param>
    /// <param name="elementBytes">1, 2, 4 or 8.</param>
    /// <param name="flipTopBit">Whether to flip; false does nothing.</param>
    public static void FlipTopBit(Span<byte> numbers, int elementBytes, bool flipTopBit)
    {
        if (!flipTopBit)
            return;
        switch (elementBytes)
        {
            case 1:
                Flip(numbers, (byte)0x80);
                break;
            case 2:
                Flip(MemoryMarshal.Cast<byte, ushort>(numbers), (ushort)0x8000);
                break;
            case 4:
                Flip(MemoryMarshal.Cast<byte, uint>(numbers), 0x8000_0000);
                break;
            default:
                Flip(MemoryMarshal.Cast<byte, ulong>(numbers), 0x8000_0000_0000_0000);
                break;
        }
    }

    /// <summary>Reverses the bytes of every number, then flips the bits in <paramref name="mask"/>.</summary>
    private static void Turn(ReadOnlySpan<byte> from, Span<byte> to, int elementBytes, ulong mask)
    {
        if (!BitConverter.IsLittleEndian || elementBytes == 1)
            from.CopyTo(to);
        switch (elementBytes)
        {
            case 1:
                Flip(to, (byte)mask);
                break;
            case 2 when BitConverter.IsLittleEndian:
                ReverseAndFlip(
                    MemoryMarshal.Cast<byte, ushort>(from),
                    MemoryMarshal.Cast<byte, ushort>(to),
                    (ushort)mask
                );
                break;
            case 2:
                Flip(MemoryMarshal.Cast<byte, ushort>(to), (ushort)mask);
                break;
            case 4:
                if (BitConverter.IsLittleEndian)
                    BinaryPrimitives.ReverseEndianness(
                        MemoryMarshal.Cast<byte, uint>(from),
                        MemoryMarshal.Cast<byte, uint>(to)
                    );
                Flip(MemoryMarshal.Cast<byte, uint>(to), (uint)mask);
                break;
            default:
                if (BitConverter.IsLittleEndian)
                    BinaryPrimitives.ReverseEndianness(
                        MemoryMarshal.Cast<byte, ulong>(from),
                        MemoryMarshal.Cast<byte, ulong>(to)
                    );
                Flip(MemoryMarshal.Cast<byte, ulong>(to), mask);
                break;
        }
    }

    /// <summary>The hot path, 16 bits: both steps in one pass.</summary>
    internal static void ReverseAndFlip(ReadOnlySpan<ushort> from, Span<ushort> to, ushort mask)
    {
        int done = Vector.IsHardwareAccelerated ? ReverseAndFlipVector(from, to, mask) : 0;
        ReverseAndFlipScalar(from[done..], to[done..], mask);
    }

    internal static void ReverseAndFlipScalar(ReadOnlySpan<ushort> from, Span<ushort> to, ushort mask)
    {
        for (int i = 0; i < from.Length; i++)
            to[i] = (ushort)(BinaryPrimitives.ReverseEndianness(from[i]) ^ mask);
    }

    private static int ReverseAndFlipVector(ReadOnlySpan<ushort> from, Span<ushort> to, ushort mask)
    {
        int step = Vector<ushort>.Count,
            i = 0;
        var flip = new Vector<ushort>(mask);
        for (; i <= from.Length - step; i += step)
        {
            var numbers = new Vector<ushort>(from[i..]);
            (((numbers << 8) | (numbers >>> 8)) ^ flip).CopyTo(to[i..]);
        }

        return i;
    }

    private static void Flip<T>(Span<T> numbers, T mask)
        where T : unmanaged, IBinaryInteger<T>
    {
        if (T.IsZero(mask))
            return;
        int i = 0;
        if (Vector.IsHardwareAccelerated)
        {
            var flip = new Vector<T>(mask);
            for (; i <= numbers.Length - Vector<T>.Count; i += Vector<T>.Count)
                (new Vector<T>(numbers[i..]) ^ flip).CopyTo(numbers[i..]);
        }

        for (; i < numbers.Length; i++)
            numbers[i] ^= mask;
    }
}
