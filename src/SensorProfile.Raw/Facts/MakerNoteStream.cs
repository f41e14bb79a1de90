using System.Buffers.Binary;
using System.Text;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Facts;

/// <summary>A maker's notes and their original position.</summary>
/// <param name="Bytes">The notes.</param>
/// <param name="Offset">Offset of their first byte in the camera's file.</param>
/// <param name="IsBigEndian">Byte order of that file.</param>
internal sealed record NoteBytes(byte[] Bytes, long Offset, bool IsBigEndian);

/// <summary>
/// A TIFF file with the notes at their original position and nothing else but the maker and model that identify their
/// kind. Stops a parser that reads too much of it.
/// </summary>
internal sealed class MakerNoteStream : Stream
{
    private const int MaxBytesRead = 32 << 20;
    private const int MaxReads = 1 << 20;
    private const int EntryBytes = 12;

    private readonly NoteBytes note;
    private readonly byte[] front; // header, and the directories if they fit before the notes
    private readonly byte[] back; // directories after the notes
    private long position;
    private long bytesRead;
    private int reads;

    public MakerNoteStream(NoteBytes note, string maker, string model)
    {
        this.note = note;
        byte[] directories = Directories(8, maker, model);
        bool fitsBefore = note.Offset >= 8 + directories.Length;
        long start = fitsBefore ? 8 : Math.Max(8, note.Offset + note.Bytes.Length);
        back = fitsBefore ? [] : Directories(start, maker, model);
        front = [.. Header(start), .. fitsBefore ? directories : []];
        Length = Math.Max(note.Offset + note.Bytes.Length, start + (fitsBefore ? 0 : back.Length));
        backStart = start;
    }

    private readonly long backStart;

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length { get; }

    public override long Position
    {
        get => position;
        set => position = value;
    }

    public override int Read(Span<byte> buffer)
    {
        int count = (int)Math.Clamp(Length - position, 0, buffer.Length);
        reads++;
        bytesRead += count;
        if (reads > MaxReads || bytesRead > MaxBytesRead)
            throw new IOException("The maker's notes lead in circles.");
        Span<byte> wanted = buffer[..count];
        wanted.Clear();
        Copy(note.Bytes, note.Offset, wanted);
        Copy(front, 0, wanted);
        Copy(back, backStart, wanted);
        position += count;
        return count;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override long Seek(long offset, SeekOrigin origin) =>
        position = origin switch
        {
            SeekOrigin.Begin => offset,
            SeekOrigin.Current => position + offset,
            _ => Length + offset,
        };

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private void Copy(byte[] part, long start, Span<byte> wanted)
    {
        long from = Math.Max(start, position);
        long to = Math.Min(start + part.Length, position + wanted.Length);
        if (from < to)
            part.AsSpan((int)(from - start), (int)(to - from)).CopyTo(wanted[(int)(from - position)..]);
    }

    private byte[] Header(long directory)
    {
        var header = new byte[8];
        (note.IsBigEndian ? "MM\0*"u8 : "II*\0"u8).CopyTo(header);
        UInt32(header.AsSpan(4), (uint)directory);
        return header;
    }

    /// <summary>
    /// A directory with maker, model and the Exif directory, which holds only the notes; then the two names.
    /// </summary>
    private byte[] Directories(long start, string maker, string model)
    {
        const int firstBytes = 2 + (3 * EntryBytes) + 4;
        const int exifBytes = 2 + EntryBytes + 4;
        byte[] makerText = [.. Encoding.UTF8.GetBytes(maker), 0, 0, 0, 0];
        byte[] modelText = [.. Encoding.UTF8.GetBytes(model), 0, 0, 0, 0];
        long exif = start + firstBytes;
        long texts = exif + exifBytes;
        var first = new byte[firstBytes];
        UInt16(first, 3);
        Entry(first.AsSpan(2), Tag.Make, TiffType.Ascii, makerText.Length, texts);
        Entry(first.AsSpan(2 + EntryBytes), Tag.Model, TiffType.Ascii, modelText.Length, texts + makerText.Length);
        Entry(first.AsSpan(2 + (2 * EntryBytes)), Tag.ExifIFD, TiffType.Long, 1, exif);
        var second = new byte[exifBytes];
        UInt16(second, 1);
        Entry(second.AsSpan(2), Tag.MakerNote, TiffType.Undefined, note.Bytes.Length, note.Offset);
        return [.. first, .. second, .. makerText, .. modelText];
    }

    private void Entry(Span<byte> entry, Tag tag, TiffType type, int count, long value)
    {
        UInt16(entry, (ushort)tag);
        UInt16(entry[2..], (ushort)type);
        UInt32(entry[4..], (uint)count);
        UInt32(entry[8..], (uint)value);
    }

    private void UInt16(Span<byte> at, ushort value)
    {
        if (note.IsBigEndian)
            BinaryPrimitives.WriteUInt16BigEndian(at, value);
        else
            BinaryPrimitives.WriteUInt16LittleEndian(at, value);
    }

    private void UInt32(Span<byte> at, uint value)
    {
        if (note.IsBigEndian)
            BinaryPrimitives.WriteUInt32BigEndian(at, value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(at, value);
    }
}
