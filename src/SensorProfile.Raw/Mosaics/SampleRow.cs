using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace SensorProfile.Raw.Mosaics;

/// <summary>Decodes the bytes of one row to samples.</summary>
/// <param name="bits">Bits per sample, 8 to 16.</param>
/// <param name="bigEndian">Byte order of 16-bit samples.</param>
/// <param name="distance">0 when samples are stored directly; otherwise each is the difference from the one this many
/// columns before (modulo 2⁸ or 2¹⁶).</param>
internal readonly struct SampleRow(int bits, bool bigEndian, int distance)
{
    /// <summary>Bytes per row.</summary>
    public int Bytes(int width) => ((width * bits) + 7) / 8;

    /// <summary>Unpacks a row.</summary>
    /// <param name="stored">Its bytes.</param>
    /// <param name="samples">Buffer for its samples.</param>
    public void Read(ReadOnlySpan<byte> stored, Span<ushort> samples)
    {
        switch (bits)
        {
            case 16:
                ReadWords(stored, samples);
                break;
            case 8:
                Widen(stored, samples);
                break;
            case 12:
                PackedBits.Unpack12(stored, samples);
                break;
            case 14:
                PackedBits.Unpack14(stored, samples);
                break;
            default:
                PackedBits.Unpack(stored, samples, bits);
                break;
        }
        if (distance > 0)
            AddUp(samples, distance, (ushort)((1 << bits) - 1));
    }

    private void ReadWords(ReadOnlySpan<byte> stored, Span<ushort> samples)
    {
        ReadOnlySpan<ushort> words = MemoryMarshal.Cast<byte, ushort>(stored)[..samples.Length];
        if (bigEndian == BitConverter.IsLittleEndian)
            BinaryPrimitives.ReverseEndianness(words, samples);
        else
            words.CopyTo(samples);
    }

    private static void Widen(ReadOnlySpan<byte> stored, Span<ushort> samples)
    {
        for (int i = 0; i < samples.Length; i++)
            samples[i] = stored[i];
    }

    private static void AddUp(Span<ushort> samples, int distance, ushort mask)
    {
        for (int i = distance; i < samples.Length; i++)
            samples[i] = (ushort)((samples[i] + samples[i - distance]) & mask);
    }
}
