using System.Buffers.Binary;

namespace SensorProfile.Raw.Containers;

/// <summary>
/// The two forms of TIFF: with 32-bit numbers (42 after the byte order), and BigTIFF with 64-bit ones (43).
/// </summary>
/// <param name="HeaderBytes">Length of the header, bytes.</param>
/// <param name="CountBytes">Size of the entry count, bytes.</param>
/// <param name="EntryBytes">Size of an entry, bytes.</param>
/// <param name="OffsetBytes">Size of an offset and of values stored in their entry, bytes.</param>
internal readonly record struct TiffForm(int HeaderBytes, int CountBytes, int EntryBytes, int OffsetBytes)
{
    /// <summary>Length of the longer header, bytes.</summary>
    public const int MostHeaderBytes = 16;

    // far beyond any file; sums of several do not overflow
    private const long Most = 1L << 60;

    /// <summary>The ordinary form.</summary>
    public static TiffForm Ordinary { get; } = new(8, 2, 12, 4);

    /// <summary>The form for files above 4 GB.</summary>
    public static TiffForm Big { get; } = new(MostHeaderBytes, 8, 20, 8);

    /// <summary>The form announced by a header.</summary>
    /// <param name="header">The first bytes of a file.</param>
    public static TiffForm Detect(ReadOnlySpan<byte> header) =>
        header is [0x49, 0x49, 43, 0, 8, 0, 0, 0, ..] or [0x4D, 0x4D, 0, 43, 0, 8, 0, 0, ..] ? Big : Ordinary;

    /// <summary>Offset of the first directory.</summary>
    public long FirstDirectory(ReadOnlySpan<byte> header, bool bigEndian) =>
        Unsigned(header.Slice(HeaderBytes - OffsetBytes, OffsetBytes), bigEndian);

    /// <summary>A number of 2, 4 or 8 bytes, at most 2⁶⁰.</summary>
    public static long Unsigned(ReadOnlySpan<byte> at, bool bigEndian) =>
        at.Length switch
        {
            2 => bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at),
            4 => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at),
            _ => (long)ulong.Min(UInt64(at, bigEndian), Most),
        };

    /// <summary>A number of 8 bytes, from −2⁶⁰ to 2⁶⁰.</summary>
    public static long Int64(ReadOnlySpan<byte> at, bool bigEndian) =>
        long.Clamp((long)UInt64(at, bigEndian), -Most, Most);

    private static ulong UInt64(ReadOnlySpan<byte> at, bool bigEndian) =>
        bigEndian ? BinaryPrimitives.ReadUInt64BigEndian(at) : BinaryPrimitives.ReadUInt64LittleEndian(at);
}
