using System.Globalization;

namespace SensorProfile.Raw.LibRaw;

/// <summary>A raw file as LibRaw describes it.</summary>
/// <param name="Mosaic">Size, borders and colours; LibRaw's levels are not used.</param>
/// <param name="Facts">Conditions of the frame, as far as LibRaw states them.</param>
public sealed record LibRawFrame(RawMosaic Mosaic, RawFacts Facts)
{
    /// <summary>Number of exposures in the file; the first one is read.</summary>
    public int Exposures { get; init; } = 1;

    internal static LibRawFrame Of(LibRawHeader header) =>
        new(
            MosaicOf(header),
            new RawFacts
            {
                Camera = header.Model.Length > 0 ? header.Model : null,
                ExposureSeconds = Positive(header.ExposureSeconds),
                Iso = Positive(header.Iso),
                Time = TimeOf(header),
                SerialNumber = header.SerialNumber.Length > 0 ? header.SerialNumber : null,
                Temperature = header.Temperature,
                Treatments = header.Treatments,
            }
        )
        {
            Exposures = header.Exposures,
        };

    private static RawMosaic MosaicOf(LibRawHeader header)
    {
        var active = new RawArea(header.Top, header.Left, header.Top + header.Height, header.Left + header.Width);
        return new RawMosaic
        {
            SensorWidth = header.SensorWidth,
            SensorHeight = header.SensorHeight,
            ActiveArea = active,
            MaskedAreas = [.. active.Around(header.SensorWidth, header.SensorHeight)],
            MaskedAreasAreNamed = false,
            ColourFilter = header.ColourFilter is [var a, var b, var c, var d]
                ? new RawColourFilter(ColourOf(a), ColourOf(b), ColourOf(c), ColourOf(d))
                : null,
        };
    }

    private static RawColour ColourOf(char letter) =>
        letter switch
        {
            'R' => RawColour.Red,
            'B' => RawColour.Blue,
            _ => RawColour.Green,
        };

    private static RawTime? TimeOf(LibRawHeader header)
    {
        if (header.Time <= 0)
            return null;
        DateTime local = DateTimeOffset.FromUnixTimeSeconds(header.Time).DateTime;
        bool isSigned = header.Offset is [('+' or '-'), ..];
        return new RawTime(
            local,
            isSigned
            && TimeSpan.TryParseExact(header.Offset[1..], @"hh\:mm", CultureInfo.InvariantCulture, out var offset)
                ? (header.Offset[0] == '-' ? -offset : offset)
                : null
        );
    }

    /// <summary>LibRaw stores 32-bit floats: 0.1 s arrives as 0.100000001.</summary>
    private static double? Positive(float value) =>
        value > 0 && float.IsFinite(value)
            ? double.Parse(value.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : null;
}
