using System.Buffers.Binary;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Samples packed without gaps, highest bit first (TIFF FillOrder 1), in either direction.
/// </summary>
internal static class PackedBits
{
    /// <summary>Unpacks samples of any width from 1 to 16 bits; the reference for the faster versions.</summary>
    public static void Unpack(ReadOnlySpan<byte> packed, Span<ushort> samples, int bits)
    {
        uint buffer = 0;
        int held = 0;
        int at = 0;
        uint mask = (1u << bits) - 1;
        for (int i = 0; i < samples.Length; i++)
        {
            for (; held < bits; held += 8)
                buffer = (buffer << 8) | packed[at++];
            held -= bits;
            samples[i] = (ushort)((buffer >> held) & mask);
        }
    }

    /// <summary>Unpacks 12-bit samples: two in three bytes.</summary>
    public static void Unpack12(ReadOnlySpan<byte> packed, Span<ushort> samples)
    {
        for (; samples.Length >= 4 && packed.Length >= 8; packed = packed[6..], samples = samples[4..])
        {
            ulong six = BinaryPrimitives.ReadUInt64BigEndian(packed);
            samples[3] = (ushort)((six >> 16) & 0xFFF); // last one first: a single bounds check
            samples[2] = (ushort)((six >> 28) & 0xFFF);
            samples[1] = (ushort)((six >> 40) & 0xFFF);
            samples[0] = (ushort)(six >> 52);
        }
        Unpack(packed, samples, 12);
    }

    /// <summary>Unpacks 14-bit samples: four in seven bytes.</summary>
    public static void Unpack14(ReadOnlySpan<byte> packed, Span<ushort> samples)
    {
        for (; samples.Length >= 4 && packed.Length >= 8; packed = packed[7..], samples = samples[4..])
        {
            ulong seven = BinaryPrimitives.ReadUInt64BigEndian(packed);
            samples[3] = (ushort)((seven >> 8) & 0x3FFF);
            samples[2] = (ushort)((seven >> 22) & 0x3FFF);
            samples[1] = (ushort)((seven >> 36) & 0x3FFF);
            samples[0] = (ushort)(seven >> 50);
        }
        Unpack(packed, samples, 14);
    }

    /// <summary>Packs samples of 1 to 16 bits; the last byte is padded with zeros.</summary>
    public static void Pack(ReadOnlySpan<ushort> samples, Span<byte> packed, int bits)
    {
        uint buffer = 0;
        int held = 0;
        int at = 0;
        foreach (ushort sample in samples)
        {
            buffer = (buffer << bits) | sample;
            for (held += bits; held >= 8; held -= 8)
                packed[at++] = (byte)(buffer >> (held - 8));
        }
        if (held > 0)
            packed[at] = (byte)(buffer << (8 - held));
    }
}
