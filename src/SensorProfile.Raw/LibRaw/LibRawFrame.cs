using System.Globalization;

namespace SensorProfile.Raw.LibRaw;

/// <summary>A raw file as LibRaw describes it.</summary>
/// <param name="Width">Columns that see light.</param>
/// <param name="Height">Rows that see light.</param>
/// <param name="ColourFilter">Four letters from the top left; null for a sensor without a filter.</param>
/// <param name="Facts">How the frame was taken, as far as LibRaw says.</param>
public sealed record LibRawFrame(int Width, int Height, string? ColourFilter, RawFacts Facts)
{
    internal static LibRawFrame Of(LibRawHeader header) =>
        new(
            header.Width,
            header.Height,
            header.ColourFilter.Length == 4 ? header.ColourFilter : null,
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
        );

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

    /// <summary>LibRaw keeps 32-bit numbers: 0.1 s comes as 0.100000001.</summary>
    private static double? Positive(float value) =>
        value > 0 && float.IsFinite(value)
            ? double.Parse(value.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : null;
}
