using System.Globalization;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Writing;

/// <summary>The tags of a DNG other than the layout of the samples.</summary>
internal static class DngTags
{
    private const int D65 = 21; // Exif LightSource

    // XYZ to linear sRGB (IEC 61966-2-1): a colour matrix is mandatory, and a synthetic camera has no better one
    private static readonly double[] xyzToRgb =
    [
        3.2406,
        -1.5372,
        -0.4986,
        -0.9689,
        1.8758,
        0.0415,
        0.0557,
        -0.2040,
        1.0570,
    ];

    /// <summary>Tags of the first directory: versions, camera, colours.</summary>
    public static void AddCamera(TiffEntries entries, DngFrame frame)
    {
        string camera = frame.Facts.Camera ?? "Unnamed camera";
        entries.Bytes(Tag.DNGVersion, TiffType.Byte, 1, 4, 0, 0);
        entries.Bytes(Tag.DNGBackwardVersion, TiffType.Byte, 1, 1, 0, 0);
        entries.Text(Tag.Model, camera);
        entries.Text(Tag.UniqueCameraModel, camera);
        entries.Text(Tag.CameraSerialNumber, frame.Facts.SerialNumber);
        entries.Text(Tag.Software, frame.Facts.Software);
        entries.Shorts(Tag.Orientation, (int)frame.Facts.Orientation);
        if (frame.ColourFilter is null)
            return;
        entries.Shorts(Tag.CalibrationIlluminant1, D65);
        entries.Fractions(Tag.ColorMatrix1, signed: true, [.. xyzToRgb.Select(Fraction.Of)]);
    }

    /// <summary>Tags of the mosaic: colour filter, areas, levels, curve.</summary>
    public static void AddMosaic(TiffEntries entries, DngFrame frame)
    {
        const int colourFilterArray = 32803;
        const int linearRaw = 34892; // in the specification, this means one sample per pixel, no filter
        entries.Shorts(Tag.PhotometricInterpretation, frame.ColourFilter is null ? linearRaw : colourFilterArray);
        if (frame.ColourFilter is { } filter)
        {
            entries.Shorts(Tag.CFARepeatPatternDim, 2, 2);
            entries.Bytes(
                Tag.CFAPattern,
                TiffType.Byte,
                (byte)filter.TopLeft,
                (byte)filter.TopRight,
                (byte)filter.BottomLeft,
                (byte)filter.BottomRight
            );
            entries.Bytes(Tag.CFAPlaneColor, TiffType.Byte, 0, 1, 2);
            entries.Shorts(Tag.CFALayout, 1);
        }
        if (frame.ActiveArea is { } active)
            entries.Longs(Tag.ActiveArea, Sides(active));
        if (frame.MaskedAreas.Count > 0)
            entries.Longs(Tag.MaskedAreas, [.. frame.MaskedAreas.SelectMany(Sides)]);
        AddLevels(entries, frame);
    }

    /// <summary>The Exif directory.</summary>
    public static void AddExif(TiffEntries entries, RawFacts facts)
    {
        entries.Bytes(Tag.ExifVersion, TiffType.Undefined, "0231"u8.ToArray());
        if (facts.ExposureSeconds is { } exposure)
            entries.Fractions(Tag.ExposureTime, signed: false, Fraction.Of(exposure));
        if (facts.Iso is { } iso)
        {
            entries.Shorts(Tag.PhotographicSensitivity, (int)Math.Min(Math.Round(iso), ushort.MaxValue));
            if (iso > ushort.MaxValue)
                entries.Longs(Tag.ISOSpeed, (long)Math.Round(iso));
        }
        if (facts.Time is { } time)
            AddTime(entries, time);
        if (facts.Temperature is { } temperature)
        {
            long denominator =
                temperature.StepCelsius > 0 ? Math.Max(1, (long)Math.Round(1 / temperature.StepCelsius)) : 1000;
            entries.Fractions(
                Tag.AmbientTemperature,
                signed: true,
                new Fraction((long)Math.Round(temperature.Celsius * denominator), denominator)
            );
        }
    }

    private static void AddTime(TiffEntries entries, RawTime time)
    {
        entries.Text(Tag.DateTimeOriginal, time.Local.ToString("yyyy:MM:dd HH:mm:ss", CultureInfo.InvariantCulture));
        entries.Text(Tag.SubSecTimeOriginal, time.Local.ToString("fffffff", CultureInfo.InvariantCulture).TrimEnd('0'));
        if (time.Offset is { } offset)
            entries.Text(
                Tag.OffsetTimeOriginal,
                (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture)
            );
    }

    private static void AddLevels(TiffEntries entries, DngFrame frame)
    {
        if (frame.BlackLevel is { } black)
        {
            entries.Shorts(Tag.BlackLevelRepeatDim, black.PatternRows, black.PatternColumns);
            entries.Fractions(Tag.BlackLevel, signed: false, [.. black.Pattern.Select(Fraction.Of)]);
            if (black.ColumnOffsets is { } columns)
                entries.Fractions(Tag.BlackLevelDeltaH, signed: true, [.. columns.Select(Fraction.Of)]);
            if (black.RowOffsets is { } rows)
                entries.Fractions(Tag.BlackLevelDeltaV, signed: true, [.. rows.Select(Fraction.Of)]);
        }
        if (frame.WhiteLevel is { } white)
            entries.Longs(Tag.WhiteLevel, (long)Math.Round(white));
        if (frame.LinearisationTable is { } table)
            entries.Shorts(Tag.LinearizationTable, [.. table.Select(code => (int)code)]);
    }

    private static IReadOnlyList<long> Sides(RawArea area) => [area.Top, area.Left, area.Bottom, area.Right];
}
