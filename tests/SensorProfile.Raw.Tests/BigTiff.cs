using System.Buffers.Binary;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Tests;

/// <summary>Rewrites a TIFF file as BigTIFF: 64-bit offsets, entries of 20 bytes, offsets as LONG8, directories as IFD8.</summary>
/// <remarks>After the description of BigTIFF that came with libtiff 4; what the directories point to stays as it is, 8
/// bytes further on.</remarks>
internal sealed class BigTiff
{
    private const int Shift = 8; // 16 bytes of header for 8
    private readonly byte[] old;
    private readonly bool bigEndian;
    private readonly List<byte> file = [];

    private BigTiff(byte[] old) => (this.old, bigEndian) = (old, old[0] == 'M');

    /// <summary>The rewritten file.</summary>
    public static byte[] From(byte[] tiff) => new BigTiff(tiff).Write();

    private byte[] Write()
    {
        file.AddRange(new byte[2 * Shift]);
        file.AddRange(old[Shift..]);
        long first = Directory(Number(old.AsSpan(4, 4)));
        byte[] bytes = [.. file];
        byte[] header = [.. old[..2], .. Bytes(43, 2), .. Bytes(8, 2), .. Bytes(0, 2), .. Bytes(first, 8)];
        header.CopyTo(bytes, 0);
        return bytes;
    }

    /// <summary>Writes the directory that stood at an offset; gives its new one.</summary>
    private long Directory(long at)
    {
        int count = (int)Number(old.AsSpan((int)at, 2));
        List<byte> entries = [.. Bytes(count, 8)];
        for (int i = 0; i < count; i++)
        {
            Span<byte> entry = old.AsSpan((int)at + 2 + (i * 12), 12);
            var tag = (Tag)Number(entry[..2]);
            var type = (TiffType)Number(entry[2..4]);
            int size = TiffEntry.BytesOf(type);
            int length = size * (int)Number(entry[4..8]);
            byte[] values = (
                length <= 4 ? entry.Slice(8, length) : old.AsSpan((int)Number(entry[8..]), length)
            ).ToArray();
            if (tag is Tag.StripOffsets or Tag.TileOffsets)
                (type, size, values) = (TiffType.Long8, 8, Each(values, size, offset => offset + Shift));
            if (tag is Tag.SubIFDs or Tag.ExifIFD)
                (type, size, values) = (TiffType.Directory8, 8, Each(values, size, Directory));
            entries.AddRange([.. Bytes((int)tag, 2), .. Bytes((int)type, 2), .. Bytes(values.Length / size, 8)]);
            entries.AddRange(
                values.Length <= 8 ? [.. values, .. new byte[8 - values.Length]] : Bytes(Append(values), 8)
            );
        }
        return Append([.. entries, .. Bytes(0, 8)]);
    }

    private byte[] Each(byte[] values, int size, Func<long, long> change) =>
        [.. values.Chunk(size).SelectMany(value => Bytes(change(Number(value)), 8))];

    private long Append(byte[] bytes)
    {
        file.AddRange(bytes);
        return file.Count - bytes.Length;
    }

    private long Number(ReadOnlySpan<byte> at) => TiffForm.Unsigned(at, bigEndian);

    private byte[] Bytes(long number, int count)
    {
        var eight = new byte[8];
        BinaryPrimitives.WriteInt64BigEndian(eight, number);
        byte[] last = eight[(8 - count)..];
        return bigEndian ? last : [.. last.Reverse()];
    }
}
