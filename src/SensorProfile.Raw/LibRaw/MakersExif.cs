using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Facts;

namespace SensorProfile.Raw.LibRaw;

/// <summary>
/// Exif facts of a maker's raw file that is TIFF inside, whatever number follows its byte order: read like those of a
/// DNG, so that both give the same. LibRaw reports only whole seconds, and neither time zone nor temperature.
/// </summary>
internal static class MakersExif
{
    /// <summary>LibRaw's facts, completed and corrected; unchanged when the file is not TIFF.</summary>
    public static RawFacts Complete(RawFacts facts, string path)
    {
        try
        {
            using var bytes = new FileBytes(path);
            var order = new byte[2];
            if (bytes.Read(0, order) < order.Length || order is not ([0x49, 0x49] or [0x4D, 0x4D]))
                return facts;
            TiffFile file = TiffFile.Read(bytes, ofAnyNumber: true);
            RawFacts own = FactsReader.Read(file, mosaic: null, curve: null, []);
            // an exposure of 0 is an empty one, for which LibRaw reports 1 s
            bool saysExposure = file.Exif?.Has(Tag.ExposureTime) == true;
            return facts with
            {
                ExposureSeconds = saysExposure ? own.ExposureSeconds : facts.ExposureSeconds,
                Iso = own.Iso ?? facts.Iso,
                Time = own.Time ?? facts.Time,
                SerialNumber = own.SerialNumber ?? facts.SerialNumber,
                Temperature = own.Temperature ?? facts.Temperature,
                Treatments = [.. facts.Treatments.Union(own.Treatments)],
                Orientation = own.Orientation,
                Software = own.Software,
            };
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return facts;
        }
    }
}
