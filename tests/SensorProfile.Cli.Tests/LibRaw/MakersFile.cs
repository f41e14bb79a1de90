using System.Buffers.Binary;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>
/// Raw files as makers write them, of a maker that does not exist: TIFF inside, with another number after the byte order,
/// so that this program's reader refuses them and LibRaw, which does not look at the number, reads them.
/// </summary>
internal static class MakersFile
{
    private const int DngVersion = 50706,
        Software = 305,
        Make = 271,
        StripOffsets = 273,
        StripByteCounts = 279,
        EntryBytes = 12;

    /// <summary>Rewrites a little-endian DNG: no DNG any more, and what was the software is its maker.</summary>
    /// <param name="dng">The DNG; its facts name a software.</param>
    /// <param name="samplesLast">Whether a copy of its only strip stands behind the directory, and counts.</param>
    public static byte[] FromDng(byte[] dng, bool samplesLast = false)
    {
        byte[] bytes = [.. dng];
        "RO"u8.CopyTo(bytes.AsSpan(2));
        int directory = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(4));
        int count = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(directory));
        int strip = 0,
            length = 0,
            stripEntry = 0;
        for (int at = directory + 2; at < directory + 2 + (count * EntryBytes); at += EntryBytes)
        {
            int value = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at + 8));
            switch (BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at)))
            {
                case DngVersion:
                    BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(at), DngVersion - 1); // no tag at all
                    break;
                case Software:
                    BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(at), Make);
                    break;
                case StripOffsets:
                    (strip, stripEntry) = (value, at);
                    break;
                case StripByteCounts:
                    length = value;
                    break;
                default:
                    break;
            }
        }
        if (!samplesLast)
            return bytes;
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(stripEntry + 8), bytes.Length);
        return [.. bytes, .. bytes.AsSpan(strip, length)];
    }
}
