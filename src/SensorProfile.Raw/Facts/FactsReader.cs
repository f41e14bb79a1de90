using System.Globalization;
using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Facts;

/// <summary>
/// Reads the conditions of a frame from the tags of TIFF/EP, Exif 2.32 and DNG, and from the maker's notes.
/// </summary>
internal sealed class FactsReader(TiffFile file, TiffDirectory? mosaic, List<RawWarning> warnings)
{
    // the form of Exif, and forms that converters have written
    private static readonly string[] moments = ["yyyy:MM:dd HH:mm:ss", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-ddTHH:mm:ss"];
    private static readonly string[] zones = [@"hh\:mm", "hhmm"];

    private readonly TiffDirectory first = file.Directories[0];

    /// <summary>Reads the facts; faults become warnings.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mosaic">Directory of the mosaic; null when unknown.</param>
    /// <param name="curve">The curve of the stored codes; null when there is none.</param>
    /// <param name="warnings">Receives the faults.</param>
    public static RawFacts Read(
        TiffFile file,
        TiffDirectory? mosaic,
        RawLinearisation? curve,
        List<RawWarning> warnings
    ) => new FactsReader(file, mosaic, warnings).Read(curve);

    private RawFacts Read(RawLinearisation? curve)
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
            Treatments = [.. Treatments(curve), .. MakerNoteFacts.Treatments(notes)],
            Corrections = OpcodeLists.Read(mosaic, warnings),
            Software = Text(first, Tag.Software),
        };
    }

    /// <summary>Model without the maker's name, with which many cameras prefix it.</summary>
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
        const double beyondSixteenBits = 65535; // Exif 2.3: the 32-bit tags then hold the value
        double? iso = Positive(Tag.PhotographicSensitivity);
        return iso is null or >= beyondSixteenBits
            ? Positive(Tag.ISOSpeed) ?? Positive(Tag.RecommendedExposureIndex) ?? iso
            : iso;
    }

    /// <summary>
    /// When the exposure started; if not stated, when it was digitised, which for a camera is the same; last, when the
    /// file was written or changed.
    /// </summary>
    private RawTime? Time()
    {
        (TiffDirectory? Directory, Tag Time, Tag Fraction, Tag Offset)[] places =
        [
            (file.Exif, Tag.DateTimeOriginal, Tag.SubSecTimeOriginal, Tag.OffsetTimeOriginal),
            (first, Tag.DateTimeOriginal, Tag.SubSecTimeOriginal, Tag.OffsetTimeOriginal),
            (file.Exif, Tag.DateTimeDigitized, Tag.SubSecTimeDigitized, Tag.OffsetTimeDigitized),
            (first, Tag.DateTime, Tag.SubSecTime, Tag.OffsetTime),
        ];
        foreach ((TiffDirectory? directory, Tag time, Tag fraction, Tag offset) in places)
            if (Text(directory, time) is { } text) // blanks stand for a clock that was not set
                return Moment(text) is { } local ? new RawTime(local + Fraction(fraction), Offset(offset)) : null;
        return null;
    }

    private static DateTime? Moment(string? text) =>
        DateTime.TryParseExact(text, moments, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local)
            ? local
            : null;

    private TimeSpan Fraction(Tag tag) =>
        Text(file.Exif, tag) is { } digits && digits.All(char.IsAsciiDigit)
            // a tick is 10⁻⁷ s
            ? TimeSpan.FromTicks(long.Parse(digits.PadRight(7, '0')[..7], CultureInfo.InvariantCulture))
            : TimeSpan.Zero;

    /// <summary>
    /// Offset of the clock from UTC. Cameras fill in one of the three tags or all. If the time's own tag is missing,
    /// another is used, since one clock produced them, but not the one of the file's last change.
    /// </summary>
    private TimeSpan? Offset(Tag ofTime)
    {
        string? text = Text(file.Exif, ofTime)
            ?? Text(file.Exif, Tag.OffsetTimeOriginal)
            ?? Text(file.Exif, Tag.OffsetTimeDigitized)
            ?? (WasChanged() ? null : Text(file.Exif, Tag.OffsetTime));
        if (
            text is [('+' or '-') and var sign, .. var rest]
            && TimeSpan.TryParseExact(rest, zones, CultureInfo.InvariantCulture, out TimeSpan offset)
            && offset <= TimeSpan.FromHours(14)
        )
            return sign == '-' ? -offset : offset;
        if (text is "Z")
            return TimeSpan.Zero;
        return
            (Integer(file.Exif, Tag.TimeZoneOffset) ?? Integer(first, Tag.TimeZoneOffset))
                is >= -12
                    and <= 14
                    and var hours
            ? TimeSpan.FromHours((double)hours)
            : null;
    }

    private bool WasChanged() => Text(first, Tag.DateTime) != Text(file.Exif, Tag.DateTimeOriginal);

    private RawTemperature? AmbientTemperature()
    {
        (long numerator, long denominator)? reading = OptionalTags.Read(
            file.Exif,
            Tag.AmbientTemperature,
            warnings,
            d => d.Fraction(Tag.AmbientTemperature),
            null
        );
        return reading is var (numerator, denominator)
            ? MakerNoteFacts.AmbientTemperature(numerator, denominator)
            : null;
    }

    private IEnumerable<RawTreatment> Treatments(RawLinearisation? table)
    {
        if (table is { } curve)
            yield return new RawTreatment(
                RawTreatmentKind.CurvedCodes,
                Invariant($"LinearizationTable: {curve.Table.Count} codes, steps of up to {curve.LargestStep}")
            );
        // it belongs to the mosaic, but converters have also written it beside the camera's name
        double? noise = new[] { mosaic, first }
            .Select(d =>
                OptionalTags.Read(
                    d,
                    Tag.NoiseReductionApplied,
                    warnings,
                    at => at.Numbers(Tag.NoiseReductionApplied, 1),
                    []
                )
            )
            .FirstOrDefault(values => values.Length > 0)
            ?[0];
        if (noise is > 0 and var applied)
            yield return new RawTreatment(
                RawTreatmentKind.NoiseReduced,
                Invariant($"NoiseReductionApplied: {applied}")
            );
        if (MakerNoteFacts.Composite(Integer(file.Exif, Tag.CompositeImage)) is { } composite)
            yield return composite;
    }

    private string? Text(TiffDirectory? directory, Tag tag) =>
        OptionalTags.Read(directory, tag, warnings, d => d.Text(tag), null);

    private long? Integer(TiffDirectory? directory, Tag tag) =>
        OptionalTags.Read(directory, tag, warnings, d => d.Integer(tag), null);

    /// <summary>A positive number from Exif, or from its place in TIFF/EP.</summary>
    private double? Positive(Tag tag)
    {
        foreach (TiffDirectory? directory in new[] { file.Exif, first, mosaic })
            if (
                OptionalTags.Read(directory, tag, warnings, d => d.Numbers(tag, 4), [])
                is [> 0 and < double.PositiveInfinity and var value, ..]
            )
                return value;
        return null;
    }
}
