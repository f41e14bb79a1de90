using System.Text.RegularExpressions;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>Files that a proper writer would not write: a small DNG with tags replaced or taken out.</summary>
internal static partial class EditedFile
{
    /// <summary>32 × 24 samples of 12 bits.</summary>
    public static DngFrame Frame { get; } = TestFrames.Noisy(32, 24, 12);

    /// <summary>The file with its directory, and its Exif directory, changed before they are written.</summary>
    public static byte[] Bytes(
        Action<TiffEntries> edit,
        DngForm? form = null,
        Action<TiffEntries>? editExif = null,
        DngFrame? frame = null
    )
    {
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries mosaic = file.NewDirectory();
        SegmentWriter.Write(file, mosaic, frame ?? Frame, form ?? new DngForm());
        DngTags.AddMosaic(mosaic, frame ?? Frame);
        DngTags.AddCamera(mosaic, frame ?? Frame);
        TiffEntries exif = file.NewDirectory();
        DngTags.AddExif(exif, (frame ?? Frame).Facts);
        editExif?.Invoke(exif);
        mosaic.Longs(Tag.ExifIFD, file.Append(exif));
        edit(mosaic);
        file.Finish(file.Append(mosaic));
        return stream.ToArray();
    }

    /// <summary>A file whose one strip holds given bytes.</summary>
    public static byte[] WithStrip(int compression, byte[] strip)
    {
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries mosaic = file.NewDirectory();
        SegmentWriter.Write(file, mosaic, Frame, new DngForm());
        DngTags.AddMosaic(mosaic, Frame);
        DngTags.AddCamera(mosaic, Frame);
        mosaic.Shorts(Tag.Compression, compression);
        mosaic.Longs(Tag.StripOffsets, file.Append(strip));
        mosaic.Longs(Tag.StripByteCounts, strip.Length);
        if (compression == 7)
            mosaic.Shorts(Tag.BitsPerSample, 12);
        file.Finish(file.Append(mosaic));
        return stream.ToArray();
    }

    /// <summary>Takes a tag out: an entry without values counts as none.</summary>
    public static void Without(this TiffEntries entries, Tag tag) => entries.Longs(tag, []);

    /// <summary>What a file is refused with, from opening to the last row, with N for the offsets.</summary>
    public static string Refusal(byte[] bytes) =>
        Refused(bytes) is { } refusal ? Offsets().Replace(refusal.Message, "byte N") : "";

    /// <summary>The exception that a file is refused with.</summary>
    public static RawFormatException? Refused(byte[] bytes) =>
        Record.Exception(() => TestFrames.Read(bytes)) as RawFormatException;

    /// <summary>The warnings of a file, with N for the offsets.</summary>
    public static string[] Warnings(byte[] bytes)
    {
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        return
        [
            .. file.Warnings.Select(warning => warning.Code + " " + Offsets().Replace(warning.ToString(), "byte N")),
        ];
    }

    [GeneratedRegex(@"\bbyte \d+")]
    private static partial Regex Offsets();
}
