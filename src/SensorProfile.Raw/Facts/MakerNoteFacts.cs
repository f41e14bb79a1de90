using System.Globalization;
using MetadataExtractor;

namespace SensorProfile.Raw.Facts;

/// <summary>Interprets entries of a maker's notes, identified by the names that MetadataExtractor gives them.</summary>
internal static class MakerNoteFacts
{
    private const double ColdestCelsius = -60; // limit for working electronics
    private const double WarmestCelsius = 100;

    private static readonly (string Name, RawTemperaturePlace Place)[] Thermometers =
    [
        ("Sensor Temperature", RawTemperaturePlace.Sensor),
        ("Camera Temperature", RawTemperaturePlace.Body),
        ("Ambient Temperature", RawTemperaturePlace.Ambient),
    ];

    /// <summary>Whether a camera can have this temperature.</summary>
    public static bool IsPossible(double celsius) => celsius is >= ColdestCelsius and <= WarmestCelsius;

    /// <summary>The temperature in its Exif 2.31 tag; null when unknown or impossible.</summary>
    /// <remarks>A denominator of −1 means unknown.</remarks>
    public static RawTemperature? AmbientTemperature(long numerator, long denominator)
    {
        if (denominator is 0 or -1)
            return null;
        double celsius = (double)numerator / denominator;
        return IsPossible(celsius)
            ? new RawTemperature(
                celsius,
                1.0 / Math.Abs((double)denominator),
                RawTemperaturePlace.Ambient,
                "AmbientTemperature"
            )
            : null;
    }

    /// <summary>The meaning of the Exif 2.32 tag CompositeImage; null when the frame is a single exposure.</summary>
    public static RawTreatment? Composite(long? value) =>
        value is 2 or 3 ? new RawTreatment(RawTreatmentKind.SeveralExposures, "CompositeImage: composite") : null;

    /// <summary>The temperature measured closest to the sensor; null when the notes have none.</summary>
    public static RawTemperature? Temperature(IReadOnlyList<MakerNote> notes)
    {
        foreach ((string name, RawTemperaturePlace place) in Thermometers)
        foreach (MakerNote note in notes)
            if (note.Name == name && Reading(note.Value) is ({ } celsius, { } step) && IsPossible(celsius))
                return new RawTemperature(celsius, step, place, name);
        return null;
    }

    /// <summary>The processing of the samples that the notes report.</summary>
    public static IEnumerable<RawTreatment> Treatments(IReadOnlyList<MakerNote> notes)
    {
        foreach (MakerNote note in notes)
            if (note.Description is { } description && Kind(note.Name, description) is { } kind)
                yield return new RawTreatment(kind, $"{note.Name}: {description}");
    }

    private static RawTreatmentKind? Kind(string name, string description)
    {
        bool isOn = description.StartsWith("On", StringComparison.OrdinalIgnoreCase);
        if (name == "Long Exposure Noise Reduction" && isOn)
            return RawTreatmentKind.DarkSubtracted;
        if (
            (isOn && name is "Multi Frame Noise Reduction" or "Multiple Exposure" or "Multiple Exposure Mode")
            || (isOn && name.StartsWith("Pixel Shift", StringComparison.OrdinalIgnoreCase))
            || description.StartsWith("Live Composite", StringComparison.OrdinalIgnoreCase)
        )
            return RawTreatmentKind.SeveralExposures;
        return IsLossy(name, description) ? RawTreatmentKind.LossyCompression : null;
    }

    /// <summary>Makers call their lossy raw format "lossy", "craw" or just "compressed".</summary>
    private static bool IsLossy(string name, string description) =>
        (
            name.EndsWith("Compression", StringComparison.Ordinal)
            && description.StartsWith("Lossy", StringComparison.OrdinalIgnoreCase)
        )
        || description.Equals("CRAW", StringComparison.OrdinalIgnoreCase)
        || description.StartsWith("Compressed RAW", StringComparison.OrdinalIgnoreCase);

    /// <summary>The first number in a value and the smallest step its notation can express.</summary>
    private static (double Celsius, double Step)? Reading(object? value) =>
        value switch
        {
            Rational { Denominator: not 0 } fraction => (
                fraction.ToDouble(),
                1.0 / Math.Abs((double)fraction.Denominator)
            ),
            Rational[] and [var only, ..] => Reading(only),
            sbyte or byte or short or ushort or int or uint or long => (
                Convert.ToDouble(value, CultureInfo.InvariantCulture),
                1
            ),
            short[] and [var only, ..] => (only, 1),
            ushort[] and [var only, ..] => (only, 1),
            int[] and [var only, ..] => (only, 1),
            float or double => (Convert.ToDouble(value, CultureInfo.InvariantCulture), 0),
            _ => null,
        };
}
