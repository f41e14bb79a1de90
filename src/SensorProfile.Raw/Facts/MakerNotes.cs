using System.Buffers.Binary;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Tiff;
using MetadataExtractor.IO;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Facts;

/// <summary>One entry of a maker's notes, as named and described by MetadataExtractor.</summary>
/// <param name="Name">Name of the tag.</param>
/// <param name="Value">Its value; null when it has none.</param>
/// <param name="Description">Its value in words; null when there are none.</param>
internal sealed record MakerNote(string Name, object? Value, string? Description);

/// <summary>Reads the maker's notes through MetadataExtractor.</summary>
/// <remarks>
/// The library gets a synthetic TIFF file that holds nothing but the notes, at their original position, since many
/// notes count offsets from the start of the file. So a hostile file can make it do no more than the length of these
/// notes allows.
/// </remarks>
internal static class MakerNotes
{
    private const int MaxBytes = 1 << 20;
    private const int MaxOffset = 8 << 20;

    /// <summary>The entries of all notes; empty when there are none or none is readable.</summary>
    public static IReadOnlyList<MakerNote> Read(TiffFile file, List<RawWarning> warnings)
    {
        TiffDirectory first = file.Directories[0];
        (TiffDirectory Directory, Tag Tag, NoteBytes? Note)? place = InExif(file, warnings)
            ?? InPrivateData(first, warnings);
        if (place is not { Note: { } note } at)
            return [];
        if (note.Offset > MaxOffset)
            return [];
        string? maker = OptionalTags.Read(first, Tag.Make, warnings, d => d.Text(Tag.Make), null);
        string? model = OptionalTags.Read(first, Tag.Model, warnings, d => d.Text(Tag.Model), null);
        if (maker is null)
            return [];
        try
        {
            return Entries(new MakerNoteStream(note, maker, model ?? ""));
        }
        catch (Exception broken) when (broken is not OutOfMemoryException)
        {
            // The library does not document its exceptions on damaged notes; no frame is refused because of its notes.
            warnings.Add(
                new RawWarning(
                    RawWarningCodes.BrokenMakerNotes,
                    at.Directory.Location(at.Tag),
                    "the maker's notes cannot be read; a temperature or treatment that only they name is unknown."
                )
            );
            return [];
        }
    }

    private static List<MakerNote> Entries(MakerNoteStream stream)
    {
        var directories = new List<MetadataExtractor.Directory>();
        TiffReader.ProcessTiff(new IndexedSeekingReader(stream), new ExifTiffHandler(directories));
        return
        [
            .. directories
                .Where(directory => directory is not (ExifDirectoryBase or GpsDirectory))
                .SelectMany(directory =>
                    directory.Tags.Select(tag => new MakerNote(
                        tag.Name,
                        directory.GetObject(tag.Type),
                        tag.Description
                    ))
                ),
        ];
    }

    private static (TiffDirectory, Tag, NoteBytes?)? InExif(TiffFile file, List<RawWarning> warnings)
    {
        if (file.Exif is not { } exif || exif.Entry(Tag.MakerNote) is not { } entry)
            return null;
        byte[] bytes = OptionalTags.Read(exif, Tag.MakerNote, warnings, d => d.Bytes(Tag.MakerNote, MaxBytes), []);
        return bytes.Length == 0
            ? null
            : (exif, Tag.MakerNote, new NoteBytes(bytes, entry.DataOffset, exif.IsBigEndian));
    }

    /// <summary>
    /// Finds the notes where DNG converters keep them: <c>Adobe</c>, 0, then blocks of name, length and data; the block
    /// <c>MakN</c> starts with the byte order and the offset of the notes in the original file (DNG specification,
    /// DNGPrivateData).
    /// </summary>
    private static (TiffDirectory, Tag, NoteBytes?)? InPrivateData(TiffDirectory first, List<RawWarning> warnings)
    {
        const int blockHeader = 8;
        const int noteHeader = 6;
        ReadOnlySpan<byte> data = OptionalTags.Read(
            first,
            Tag.DNGPrivateData,
            warnings,
            d => d.Bytes(Tag.DNGPrivateData, MaxBytes),
            []
        );
        if (!data.StartsWith("Adobe\0"u8))
            return null;
        for (int at = 6; at + blockHeader <= data.Length; )
        {
            ReadOnlySpan<byte> block = data[at..];
            uint length = BinaryPrimitives.ReadUInt32BigEndian(block[4..]);
            if (length > block.Length - blockHeader)
                return null;
            if (block.StartsWith("MakN"u8) && length > noteHeader)
            {
                ReadOnlySpan<byte> note = block.Slice(blockHeader, (int)length);
                uint offset = BinaryPrimitives.ReadUInt32BigEndian(note[2..]);
                return (first, Tag.DNGPrivateData, new NoteBytes(note[noteHeader..].ToArray(), offset, note[0] == 'M'));
            }
            at += blockHeader + (int)length + ((int)length & 1);
        }
        return null;
    }
}
