using System.Globalization;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Mosaics;
using static System.FormattableString;

namespace SensorProfile.Raw.Facts;

/// <summary>
/// Reads how a frame was taken from the tags of TIFF/EP, Exif 2.32 and DNG, and from the maker's notes.
/// </summary>
internal sealed class FactsReader(TiffFile file, FoundMosaic found, List<RawWarning> warnings)
{
    private readonly TiffDirectory first = file.Directories[0];

    /// <summary>Reads them; what is wrong with them becomes a warning.</summary>
    public static RawFacts Read(TiffFile file, FoundMosaic found, RawMosaic mosaic, List<RawWarning> warnings) =>
        new FactsReader(file, found, warnings).Read(mosaic);

    private RawFacts Read(RawMosaic mosaic)
    {
        IReadOnlyList<MakerNote> notes = MakerNotes.Read(file, warnings);
        return new RawFacts
        {
            Camera = CameraName(),
            SerialNumber = Text(first, Tag.CameraSerialNumber) ?? Text(file.Exif, Tag.BodySerialNumber),
            ExposureSeconds = Positive(Tag.ExposureTime),
            Iso = Iso(),
            Time = Time(),
            Orientation = Integer(first, Tag.Orientation) is >= 1 and <= 8 and var turn
                ? (RawOrientation)turn
                : RawOrientation.Upright,
            Temperature = MakerNoteFacts.Temperature(notes) ?? AmbientTemperature(),
            Treatments = [.. Treatments(mosaic), .. MakerNoteFacts.Treatments(notes)],
            Software = Text(first, Tag.Software),
        };
    }

    /// <summary>Model without the maker's name, which many cameras write before it.</summary>
    private string? CameraName()
    {
        string? model = Text(first, Tag.Model) ?? Text(first, Tag.UniqueCameraModel);
        string? maker = Text(first, Tag.Make)?.Split(' ')[0];
        return
            model is not null
            && maker is not null
            && model.Length > maker.Length + 1
            && model.StartsWith(maker + " ", StringComparison.OrdinalIgnoreCase)
            ? model[(maker.Length + 1)..].Trim()
            : model;
    }

    private double? Iso()
    {
        const double beyondSixteenBits = 65535; // Exif 2.3: then the 32-bit tags hold it
        double? iso = Positive(Tag.PhotographicSensitivity);
        return iso is null or >= beyondSixteenBits
            ? Positive(Tag.ISOSpeed) ?? Positive(Tag.RecommendedExposureIndex) ?? iso
            : iso;
    }

    private RawTime? Time()
    {
        string? text = Text(file.Exif, Tag.DateTimeOriginal)
            ?? Text(first, Tag.DateTimeOriginal)
            ?? Text(first, Tag.DateTime);
        if (
            !DateTime.TryParseExact(
                text,
                "yyyy:MM:dd HH:mm:ss",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out DateTime local
            )
        )
            return null;
        string? fraction = Text(file.Exif, Tag.SubSecTimeOriginal);
        if (fraction is not null && fraction.Length <= 7 && fraction.All(char.IsAsciiDigit))
            // a tick is 10⁻⁷ s
            local = local.AddTicks(long.Parse(fraction.PadRight(7, '0'), CultureInfo.InvariantCulture));
        return new RawTime(local, Offset());
    }

    private TimeSpan? Offset()
    {
        string? text = Text(file.Exif, Tag.OffsetTimeOriginal);
        if (
            text is [('+' or '-') and var sign, .. var rest]
            && TimeSpan.TryParseExact(rest, @"hh\:mm", CultureInfo.InvariantCulture, out TimeSpan offset)
            && offset <= TimeSpan.FromHours(14)
        )
            return sign == '-' ? -offset : offset;
        return
            (Integer(file.Exif, Tag.TimeZoneOffset) ?? Integer(first, Tag.TimeZoneOffset))
                is >= -12
                    and <= 14
                    and var hours
            ? TimeSpan.FromHours((double)hours)
            : null;
    }

    private RawTemperature? AmbientTemperature()
    {
        (long numerator, long denominator)? reading = OptionalTags.Read(
            file.Exif,
            Tag.AmbientTemperature,
            warnings,
            d => d.Fraction(Tag.AmbientTemperature),
            null
        );
        if (reading is not ({ } numerator, not 0 and not -1 and var denominator)) // −1 stands for unknown (Exif 2.31)
            return null;
        double celsius = (double)numerator / denominator;
        return MakerNoteFacts.IsPossible(celsius)
            ? new RawTemperature(
                celsius,
                1.0 / Math.Abs(denominator),
                RawTemperaturePlace.Ambient,
                "AmbientTemperature"
            )
            : null;
    }

    private IEnumerable<RawTreatment> Treatments(RawMosaic mosaic)
    {
        if (mosaic.Linearisation is { } curve)
            yield return new RawTreatment(
                RawTreatmentKind.CurvedCodes,
                Invariant($"LinearizationTable: {curve.Table.Count} codes, steps of up to {curve.LargestStep}")
            );
        double[] noise = OptionalTags.Read(
            first,
            Tag.NoiseReductionApplied,
            warnings,
            d => d.Numbers(Tag.NoiseReductionApplied, 1),
            []
        );
        if (noise is [> 0 and var applied])
            yield return new RawTreatment(
                RawTreatmentKind.NoiseReduced,
                Invariant($"NoiseReductionApplied: {applied}")
            );
        if (Integer(file.Exif, Tag.CompositeImage) is 2 or 3)
            yield return new RawTreatment(RawTreatmentKind.SeveralExposures, "CompositeImage: composite");
    }

    private string? Text(TiffDirectory? directory, Tag tag) =>
        OptionalTags.Read(directory, tag, warnings, d => d.Text(tag), null);

    private long? Integer(TiffDirectory? directory, Tag tag) =>
        OptionalTags.Read(directory, tag, warnings, d => d.Integer(tag), null);

    /// <summary>A number above 0 from Exif, or from where TIFF/EP has it.</summary>
    private double? Positive(Tag tag)
    {
        foreach (TiffDirectory? directory in new[] { file.Exif, first, found.Directory })
            if (
                OptionalTags.Read(directory, tag, warnings, d => d.Numbers(tag, 4), [])
                is [> 0 and < double.PositiveInfinity and var value, ..]
            )
                return value;
        return null;
    }
}
