using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SensorProfile.Raw.Facts;

namespace SensorProfile.Raw.LibRaw;

/// <summary>Facts that only Exif and the maker's notes state about a frame read by LibRaw.</summary>
internal static class LibRawNotes
{
    private const int ExposureTag = 0x829A,
        ShutterTag = 0x9201,
        SerialNumberTag = 0xA431,
        AmbientTemperatureTag = 0x9400,
        CompositeTag = 0xA460;

    // OffsetTimeOriginal, OffsetTimeDigitized, OffsetTime: a camera's file has not been changed since it was taken
    private static readonly int[] offsets = [0x9011, 0x9012, 0x9010];

    /// <summary>
    /// Adds temperature, treatments, serial number and time zone to the header, if the file states them.
    /// </summary>
    public static LibRawHeader Add(LibRawHeader header, string path)
    {
        IReadOnlyList<MetadataExtractor.Directory> directories;
        try
        {
            directories = ImageMetadataReader.ReadMetadata(path);
        }
        catch (Exception unknown) when (unknown is not OutOfMemoryException)
        {
            return header; // MetadataExtractor knows fewer formats, and its exceptions on damage are undocumented
        }
        MakerNote[] notes =
        [
            .. directories.SelectMany(d =>
                d.Tags.Select(tag => new MakerNote(tag.Name, d.GetObject(tag.Type), tag.Description))
            ),
        ];
        ExifSubIfdDirectory? exif = directories.OfType<ExifSubIfdDirectory>().FirstOrDefault();
        return header with
        {
            ExposureSeconds = IsMadeUp(header.ExposureSeconds, directories) ? 0 : header.ExposureSeconds,
            Temperature = MakerNoteFacts.Temperature(notes) ?? AmbientTemperature(exif),
            Treatments = [.. MakerNoteFacts.Treatments(notes), .. Composite(exif)],
            SerialNumber = exif?.GetString(SerialNumberTag)?.Trim() ?? "",
            Offset = offsets.Select(tag => exif?.GetString(tag)?.Trim()).FirstOrDefault(text => text is [_, ..]) ?? "",
        };
    }

    private static RawTemperature? AmbientTemperature(ExifSubIfdDirectory? exif) =>
        exif is not null && exif.TryGetRational(AmbientTemperatureTag, out Rational reading)
            ? MakerNoteFacts.AmbientTemperature(reading.Numerator, reading.Denominator)
            : null;

    private static IEnumerable<RawTreatment> Composite(ExifSubIfdDirectory? exif) =>
        exif is not null && exif.TryGetInt32(CompositeTag, out int kind) && MakerNoteFacts.Composite(kind) is { } made
            ? [made]
            : [];

    /// <summary>
    /// LibRaw reports 1 s when the exposure is empty. The Exif tags tell whether 1 s is meant: an exposure of 0 with a
    /// shutter value of 0 (2⁰ s) is an empty one. Without tags this cannot be told, and 1 s stays.
    /// </summary>
    private static bool IsMadeUp(float seconds, IReadOnlyList<MetadataExtractor.Directory> directories)
    {
        ExifDirectoryBase[] exif = [.. directories.OfType<ExifDirectoryBase>()];
        if (seconds != 1 || exif.Length == 0)
            return false;
        return exif.Any(d => d.ContainsTag(ExposureTag))
            ? !exif.Any(d => d.TryGetRational(ExposureTag, out Rational exposure) && exposure.ToDouble() > 0)
            : !exif.Any(d => d.ContainsTag(ShutterTag));
    }
}
