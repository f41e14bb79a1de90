using System.Buffers.Binary;
using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.LibRaw;

/// <summary>
/// Tells whether the end of a maker's raw file, whose samples this program does not read itself, is missing.
/// </summary>
/// <remarks>
/// An incomplete copy is the most common damage, and a reader that misses data at the end calls it "unsupported". The
/// directories of TIFF (whatever number follows the byte order), the boxes of ISO 14496-12 and the offsets of one other
/// header tell how long the file must be. Used only after reading has failed: cameras have written wrong lengths.
/// </remarks>
internal static class TruncationCheck
{
    private const string Remedy = TiffDirectory.Repair;
    private const int MostBoxes = 1000;
    private const int MarkOfHeap = 6, // of .crw: its kind
        OtherMark = 8, // of .raf: position of a mark after the maker's name
        OffsetsOfOther = 84; // and three pairs of offset and length

    private static readonly (Tag Offsets, Tag Lengths)[] places =
    [
        (Tag.StripOffsets, Tag.StripByteCounts),
        (Tag.TileOffsets, Tag.TileByteCounts),
        (Tag.JpegOffset, Tag.JpegLength),
    ];

    /// <summary>What is missing; null when the file is as long as it declares, or declares nothing.</summary>
    public static RawFormatException? Find(string path)
    {
        try
        {
            using var file = new FileBytes(path);
            var start = new byte[OffsetsOfOther + 24];
            start = start[..file.Read(0, start)];
            return start switch
            {
                // starts like TIFF, with the length of its header where TIFF has the offset of the first directory
                _ when start.AsSpan().IndexOf("HEAPCCDR"u8) == MarkOfHeap => null,
                [0x49, 0x49, ..] or [0x4D, 0x4D, ..] => InTiff(file),
                [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', ..] => InBoxes(file),
                _ when start.AsSpan().IndexOf("CCD-RAW"u8) == OtherMark => InOffsets(file, start),
                _ => null,
            };
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static RawFormatException? InTiff(FileBytes file)
    {
        TiffFile tiff;
        try
        {
            tiff = TiffFile.Read(file, ofAnyNumber: true);
        }
        catch (RawFormatException damage)
        {
            return damage.Refusal == RawRefusal.Damaged ? damage : null;
        }
        foreach (TiffDirectory directory in tiff.Directories)
        foreach ((Tag offsets, Tag lengths) in places)
            if (End(directory, offsets, lengths) is { } end && end > file.Length)
                return directory.Damaged(
                    offsets,
                    Invariant($"the data would end at byte {end}, but the file ends after {file.Length} bytes.")
                );
        RawWarning? beyond = tiff.Warnings.FirstOrDefault(w => w.Location.ByteOffset >= file.Length);
        return beyond is null
            ? null
            : Missing(
                file,
                beyond.Location.ByteOffset!.Value,
                Invariant($"a directory should stand here, but the file ends after {file.Length} bytes.")
            );
    }

    private static long? End(TiffDirectory directory, Tag offsets, Tag lengths)
    {
        const int most = 65_536;
        try
        {
            long[] from = directory.Integers(offsets, most),
                count = directory.Integers(lengths, most);
            return from.Length > 0 && from.Length == count.Length ? from.Zip(count, (f, c) => f + c).Max() : null;
        }
        catch (RawFormatException)
        {
            return null;
        }
    }

    private static RawFormatException? InBoxes(FileBytes file)
    {
        var head = new byte[16];
        long at = 0;
        for (int box = 0; box < MostBoxes && at < file.Length; box++)
        {
            Array.Clear(head);
            file.Read(at, head);
            long length = BinaryPrimitives.ReadUInt32BigEndian(head);
            if (length == 1) // then the length follows the name, in 64 bits
                length = BinaryPrimitives.ReadInt64BigEndian(head.AsSpan(8));
            if (length < 8) // 0: extends to the end of the file
                return null;
            if (length > file.Length - at)
                return Missing(
                    file,
                    at,
                    Invariant(
                        $"the part that begins here has {length} bytes, but {file.Length - at} are left of the file."
                    )
                );
            at += length;
        }
        return null;
    }

    private static RawFormatException? InOffsets(FileBytes file, byte[] start)
    {
        for (int at = OffsetsOfOther; at + 8 <= start.Length; at += 8)
        {
            long end =
                (long)BinaryPrimitives.ReadUInt32BigEndian(start.AsSpan(at))
                + BinaryPrimitives.ReadUInt32BigEndian(start.AsSpan(at + 4));
            if (end > file.Length)
                return Missing(
                    file,
                    at,
                    Invariant($"the data would end at byte {end}, but the file ends after {file.Length} bytes.")
                );
        }
        return null;
    }

    private static RawFormatException Missing(FileBytes file, long at, string problem) =>
        new(RawRefusal.Damaged, new RawLocation(file.File, ByteOffset: at), problem, Remedy);
}
