using System.Buffers.Binary;
using MetadataExtractor.Formats.Exif;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Facts;

/// <summary>
/// DNG files with a maker's notes of our making: a plain directory, as several makers have it, with the tags that
/// MetadataExtractor knows by name.
/// </summary>
/// <remarks>
/// The maker that has a plain directory with a camera temperature is found by asking the library, so that no name
/// stands here.
/// </remarks>
internal static class MakerNoteFiles
{
    private const string Suffix = "MakernoteDirectory";

    private static readonly (string Maker, int Tag)[] kinds = [.. Kinds("Camera Temperature")];

    /// <summary>A file whose notes state a temperature of whole degrees.</summary>
    public static byte[] Bytes(short temperature)
    {
        foreach ((string maker, int tag) in kinds)
        {
            byte[] bytes = Bytes(maker, entries => entries.Shorts((Tag)tag, temperature));
            using RawFile file = RawFile.Open(new MemoryBytes(bytes));
            if (file.Facts.Temperature is { Place: RawTemperaturePlace.Body })
                return bytes;
        }
        throw new InvalidOperationException(
            "No maker's notes that begin with a directory have a camera temperature any more."
        );
    }

    /// <summary>A file with notes of given entries.</summary>
    public static byte[] Bytes(string maker, Action<TiffEntries> fill)
    {
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries mosaic = file.NewDirectory();
        DngFrame frame = TestFrames.Noisy(32, 32, 12);
        SegmentWriter.Write(file, mosaic, frame, new DngForm());
        DngTags.AddMosaic(mosaic, frame);
        DngTags.AddCamera(mosaic, frame);
        mosaic.Text(Tag.Make, maker);
        TiffEntries note = file.NewDirectory();
        fill(note);
        long start = file.Append(note);
        TiffEntries exif = file.NewDirectory();
        exif.Bytes(Tag.MakerNote, TiffType.Undefined, stream.ToArray()[(int)start..]);
        // The notes are copied behind themselves: entries of up to four bytes have no offsets that could go wrong.
        mosaic.Longs(Tag.ExifIFD, file.Append(exif));
        file.Finish(file.Append(mosaic));
        return stream.ToArray();
    }

    /// <summary>
    /// A file whose notes stand in DNGPrivateData, as DNG converters put them, with an offset in the original file.
    /// </summary>
    /// <param name="temperature">The temperature that they state.</param>
    /// <param name="oldOffset">Their offset in the original file.</param>
    /// <param name="hugeEntries">Entries before it that claim a million values each.</param>
    public static byte[] BytesWithPrivateData(short temperature, uint oldOffset, int hugeEntries = 0)
    {
        foreach ((string maker, int tag) in kinds)
        {
            byte[] note = Note(tag, temperature, hugeEntries);
            var data = new byte[20 + note.Length];
            "Adobe\0MakN"u8.CopyTo(data);
            BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(10), 6 + note.Length);
            "II"u8.CopyTo(data.AsSpan(14));
            BinaryPrimitives.WriteUInt32BigEndian(data.AsSpan(16), oldOffset);
            note.CopyTo(data, 20);
            byte[] bytes = EditedFile.Bytes(tags =>
            {
                tags.Text(Tag.Make, maker);
                tags.Bytes(Tag.DNGPrivateData, TiffType.Byte, data);
            });
            using RawFile file = RawFile.Open(new MemoryBytes(bytes));
            if (file.Facts.Temperature is not null || file.Warnings.Count > 0)
                return bytes;
        }
        throw new InvalidOperationException(
            "No maker's notes that begin with a directory have a camera temperature any more."
        );
    }

    private static byte[] Note(int tag, short temperature, int hugeEntries)
    {
        var note = new byte[2 + ((hugeEntries + 1) * 12) + 4];
        BinaryPrimitives.WriteInt16LittleEndian(note, (short)(hugeEntries + 1));
        for (int i = 0; i < hugeEntries; i++)
            Entry(note.AsSpan(2 + (i * 12)), i + 1, TiffType.Byte, 1_000_000, 0);
        Entry(note.AsSpan(2 + (hugeEntries * 12)), tag, TiffType.SignedShort, 1, (ushort)temperature);
        return note;
    }

    private static void Entry(Span<byte> entry, int tag, TiffType type, int count, int value)
    {
        BinaryPrimitives.WriteUInt16LittleEndian(entry, (ushort)tag);
        BinaryPrimitives.WriteUInt16LittleEndian(entry[2..], (ushort)type);
        BinaryPrimitives.WriteInt32LittleEndian(entry[4..], count);
        BinaryPrimitives.WriteInt32LittleEndian(entry[8..], value);
    }

    private static IEnumerable<(string Maker, int Tag)> Kinds(string name) =>
        from type in typeof(ExifDirectoryBase).Assembly.GetTypes()
        where type.Name.EndsWith(Suffix, StringComparison.Ordinal) && !type.IsAbstract
        let directory = (MetadataExtractor.Directory)Activator.CreateInstance(type)!
        from tag in Enumerable.Range(0, 65_536)
        where directory.HasTagName(tag) && directory.GetTagName(tag) == name
        let words = type.Name[..^Suffix.Length]
        from length in Enumerable.Range(3, Math.Max(0, words.Length - 2))
        select (words[..length].ToUpperInvariant(), tag);
}
