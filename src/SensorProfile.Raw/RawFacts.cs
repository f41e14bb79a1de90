namespace SensorProfile.Raw;

/// <summary>
/// What the file states about how the frame was taken. A value is null when the file does not state it or states
/// something impossible, such as an exposure of 0 s.
/// </summary>
public sealed record RawFacts
{
    /// <summary>Name of the camera without its maker's (Exif Model, or else DNG UniqueCameraModel).</summary>
    public string? Camera { get; init; }

    /// <summary>Serial number of the camera (DNG CameraSerialNumber, or else Exif BodySerialNumber).</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Exposure, s.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>Exposure index as given by the camera (ISO 12232).</summary>
    public double? Iso { get; init; }

    /// <summary>When the exposure started.</summary>
    public RawTime? Time { get; init; }

    /// <summary>How to turn the frame upright; samples are always returned as stored.</summary>
    public RawOrientation Orientation { get; init; } = RawOrientation.Upright;

    /// <summary>A temperature stated by the file; null when there is none.</summary>
    public RawTemperature? Temperature { get; init; }

    /// <summary>
    /// Processing of the samples by the camera or a converter before they were stored, as far as the file states it.
    /// </summary>
    public IReadOnlyList<RawTreatment> Treatments { get; init; } = [];

    /// <summary>
    /// What the file asks a converter to correct in the samples (DNG opcode lists 1 and 2), in words; nothing of it is
    /// applied: samples are handed out as stored.
    /// </summary>
    public IReadOnlyList<string> Corrections { get; init; } = [];

    /// <summary>Program or firmware that wrote the file.</summary>
    public string? Software { get; init; }
}

/// <summary>A time as written by a camera.</summary>
/// <param name="Local">Time on the camera's clock, with fractions of a second.</param>
/// <param name="Offset">Offset of that clock from UTC (Exif 2.31 OffsetTimeOriginal); null when not stated.</param>
public sealed record RawTime(DateTime Local, TimeSpan? Offset)
{
    /// <summary>The time in UTC; null when the zone is unknown.</summary>
    public DateTimeOffset? Utc => Offset is { } offset ? new DateTimeOffset(Local, offset).ToUniversalTime() : null;
}

/// <summary>Orientation of a stored frame (TIFF Orientation): where its first row and first column belong.</summary>
public enum RawOrientation
{
    /// <summary>Upright: first row at the top, first column at the left.</summary>
    Upright = 1,

    /// <summary>Mirrored left to right.</summary>
    Mirrored = 2,

    /// <summary>Rotated by 180°.</summary>
    TurnedAround = 3,

    /// <summary>Mirrored top to bottom.</summary>
    MirroredTopToBottom = 4,

    /// <summary>Mirrored along the diagonal from top left to bottom right.</summary>
    Transposed = 5,

    /// <summary>To be rotated by 90° clockwise.</summary>
    QuarterClockwise = 6,

    /// <summary>Mirrored along the other diagonal.</summary>
    TransposedOtherwise = 7,

    /// <summary>To be rotated by 90° anticlockwise.</summary>
    QuarterCounterclockwise = 8,
}
