namespace SensorProfile.Raw;

/// <summary>
/// What the file says of how the frame was taken. A value is null when the file is silent or holds something
/// impossible, such as an exposure of 0 s.
/// </summary>
public sealed record RawFacts
{
    /// <summary>Name of the camera without that of its maker (Exif Model; else DNG UniqueCameraModel).</summary>
    public string? Camera { get; init; }

    /// <summary>Serial number of the camera (DNG CameraSerialNumber; else Exif BodySerialNumber).</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Exposure, s.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>Exposure index as the camera calls it (ISO 12232).</summary>
    public double? Iso { get; init; }

    /// <summary>When the exposure began.</summary>
    public RawTime? Time { get; init; }

    /// <summary>How the frame must be turned to stand upright; it is handed out as stored.</summary>
    public RawOrientation Orientation { get; init; } = RawOrientation.Upright;

    /// <summary>A temperature that the file states; null when there is none.</summary>
    public RawTemperature? Temperature { get; init; }

    /// <summary>
    /// What the camera, or a converter, did to the samples before they were stored, as far as the file says.
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

/// <summary>A time as a camera writes it.</summary>
/// <param name="Local">What the camera's clock showed, fractions of a second included.</param>
/// <param name="Offset">How far that clock is ahead of UTC (Exif 2.31 OffsetTimeOriginal); null when the file does not
/// say.</param>
public sealed record RawTime(DateTime Local, TimeSpan? Offset)
{
    /// <summary>The time in UTC; null when the zone is not known.</summary>
    public DateTimeOffset? Utc => Offset is { } offset ? new DateTimeOffset(Local, offset).ToUniversalTime() : null;
}

/// <summary>How a stored frame lies (TIFF Orientation): where the stored first row and first column belong.</summary>
public enum RawOrientation
{
    /// <summary>As it is: first row at the top, first column at the left.</summary>
    Upright = 1,

    /// <summary>Mirrored left to right.</summary>
    Mirrored = 2,

    /// <summary>Turned by 180°.</summary>
    TurnedAround = 3,

    /// <summary>Mirrored top to bottom.</summary>
    MirroredTopToBottom = 4,

    /// <summary>Mirrored along the diagonal from top left to bottom right.</summary>
    Transposed = 5,

    /// <summary>To be turned by 90° clockwise.</summary>
    QuarterClockwise = 6,

    /// <summary>Mirrored along the other diagonal.</summary>
    TransposedOtherwise = 7,

    /// <summary>To be turned by 90° counter-clockwise.</summary>
    QuarterCounterclockwise = 8,
}
