using System.Buffers.Binary;
using System.Text;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Writing;

/// <summary>
/// Writes a TIFF file: first the data that directories point to, then the directories, and the header's pointer at the
/// very end.
/// </summary>
internal sealed class TiffBuilder
{
    private const int HeaderBytes = 8;

    private readonly Stream stream;
    private readonly bool bigEndian;

    public TiffBuilder(Stream stream, bool bigEndian)
    {
        this.stream = stream;
        this.bigEndian = bigEndian;
        stream.Write(new byte[HeaderBytes]);
    }

    /// <summary>Writes bytes at an even offset.</summary>
    /// <returns>Their offset.</returns>
    /// <exception cref="IOException">The file would be longer than TIFF can address.</exception>
    public long Append(ReadOnlySpan<byte> bytes)
    {
        if (stream.Position % 2 != 0)
            stream.WriteByte(0);
        long offset = stream.Position;
        if (offset + bytes.Length > uint.MaxValue)
            throw new IOException("The frame is larger than the 4 GB that a DNG can hold.");
        stream.Write(bytes);
        return offset;
    }

    /// <summary>Writes a directory and the values that do not fit in it.</summary>
    /// <returns>Its offset.</returns>
    public long Append(TiffEntries entries)
    {
        const int entryBytes = 12;
        var bytes = new byte[2 + (entries.Count * entryBytes) + 4];
        UInt16(bytes, (ushort)entries.Count);
        int at = 2;
        foreach ((Tag tag, TiffType type, byte[] values) in entries.InOrder)
        {
            Span<byte> entry = bytes.AsSpan(at, entryBytes);
            UInt16(entry, (ushort)tag);
            UInt16(entry[2..], (ushort)type);
            UInt32(entry[4..], (uint)(values.Length / TiffEntry.BytesOf(type)));
            if (values.Length <= 4)
                values.CopyTo(entry[8..]);
            else
                UInt32(entry[8..], (uint)Append(values));
            at += entryBytes;
        }
        return Append(bytes);
    }

    /// <summary>Writes the header, which completes the file.</summary>
    public void Finish(long firstDirectory)
    {
        var header = new byte[HeaderBytes];
        (bigEndian ? "MM\0*"u8 : "II*\0"u8).CopyTo(header);
        UInt32(header.AsSpan(4), (uint)firstDirectory);
        stream.Position = 0;
        stream.Write(header);
    }

    /// <summary>An empty directory in this file's byte order.</summary>
    public TiffEntries NewDirectory() => new(bigEndian);

    private void UInt16(Span<byte> at, ushort value) => TiffEntries.Put(at, value, bigEndian);

    private void UInt32(Span<byte> at, uint value) => TiffEntries.Put(at, value, bigEndian);
}

/// <summary>The entries of a directory under construction.</summary>
internal sealed class TiffEntries(bool bigEndian)
{
    private readonly SortedDictionary<Tag, (TiffType Type, byte[] Values)> entries = [];

    /// <summary>Number of entries.</summary>
    public int Count => entries.Count;

    /// <summary>The entries in ascending order of tag, as TIFF requires.</summary>
    public IEnumerable<(Tag Tag, TiffType Type, byte[] Values)> InOrder =>
        entries.Select(entry => (entry.Key, entry.Value.Type, entry.Value.Values));

    /// <summary>Writes 16 bits.</summary>
    public static void Put(Span<byte> at, ushort value, bool bigEndian)
    {
        if (bigEndian)
            BinaryPrimitives.WriteUInt16BigEndian(at, value);
        else
            BinaryPrimitives.WriteUInt16LittleEndian(at, value);
    }

    /// <summary>Writes 32 bits.</summary>
    public static void Put(Span<byte> at, uint value, bool bigEndian)
    {
        if (bigEndian)
            BinaryPrimitives.WriteUInt32BigEndian(at, value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(at, value);
    }

    /// <summary>Adds 16-bit numbers.</summary>
    public void Shorts(Tag tag, params IReadOnlyList<int> values)
    {
        var bytes = new byte[values.Count * 2];
        for (int i = 0; i < values.Count; i++)
            Put(bytes.AsSpan(i * 2), (ushort)values[i], bigEndian);
        entries[tag] = (TiffType.Short, bytes);
    }

    /// <summary>Adds 32-bit numbers.</summary>
    public void Longs(Tag tag, params IReadOnlyList<long> values)
    {
        var bytes = new byte[values.Count * 4];
        for (int i = 0; i < values.Count; i++)
            Put(bytes.AsSpan(i * 4), (uint)values[i], bigEndian);
        entries[tag] = (TiffType.Long, bytes);
    }

    /// <summary>Adds fractions, signed or not.</summary>
    public void Fractions(Tag tag, bool signed, params IReadOnlyList<Fraction> values)
    {
        var bytes = new byte[values.Count * 8];
        for (int i = 0; i < values.Count; i++)
        {
            Put(bytes.AsSpan(i * 8), (uint)values[i].Numerator, bigEndian);
            Put(bytes.AsSpan((i * 8) + 4), (uint)values[i].Denominator, bigEndian);
        }
        entries[tag] = (signed ? TiffType.SignedRational : TiffType.Rational, bytes);
    }

    /// <summary>Adds single bytes.</summary>
    public void Bytes(Tag tag, TiffType type, params byte[] values) => entries[tag] = (type, values);

    /// <summary>Adds text, if there is any.</summary>
    public void Text(Tag tag, string? text)
    {
        if (!string.IsNullOrEmpty(text))
            entries[tag] = (TiffType.Ascii, [.. Encoding.UTF8.GetBytes(text), 0]);
    }
}
