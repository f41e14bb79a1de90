using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames;

/// <summary>One frame as its header and the capture table describe it; no pixel has been read.</summary>
public sealed record Frame
{
    /// <summary>Full path.</summary>
    public required string Path { get; init; }

    /// <summary>
    /// Name shown to the user and written into profiles: relative to the folder that was given, with forward slashes.
    /// </summary>
    public required string Name { get; init; }

    /// <summary>What kind of file holds it.</summary>
    internal FrameFormat Format { get; init; }

    /// <summary>What it was taken for.</summary>
    public FrameKind Kind { get; init; }

    /// <summary>Exposure, s; null when unknown.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>
    /// Sensor temperature as the sensor's probe read it, °C; null when missing, a sentinel, stuck or impossible.
    /// </summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Where the temperature comes from.</summary>
    internal TemperatureOrigin TemperatureOrigin { get; init; }

    /// <summary>
    /// Temperature that was asked of the cooler, °C; null when not said. Never used in place of the reading.
    /// </summary>
    public double? SetTemperatureCelsius { get; init; }

    /// <summary>Gain, offset, ISO, binning and read-out mode.</summary>
    public ModeSettings Settings { get; init; } = new();

    /// <summary>Start of the exposure, UTC; null when unknown.</summary>
    public DateTimeOffset? StartUtc { get; init; }

    /// <summary>Frame width, px.</summary>
    public int Width { get; init; }

    /// <summary>Frame height, px.</summary>
    public int Height { get; init; }

    /// <summary>All stored samples of a raw file, and which of them see light; null for other files.</summary>
    internal SensorArea? Sensor { get; init; }

    /// <summary>
    /// Size, and the first row and column of the sensor, as far as the file says: only frames that agree in all show the
    /// same pixels.
    /// </summary>
    internal (int Width, int Height, int Top, int Left) Place =>
        (Width, Height, Sensor?.Active.Top ?? 0, Sensor?.Active.Left ?? 0);

    /// <summary>Index of the image HDU that holds the pixels of a FITS file.</summary>
    public int Hdu { get; init; }

    /// <summary>
    /// Colour filter array in file order (first row of the file first), for example "RGGB", offsets and row order
    /// applied; null for monochrome.
    /// </summary>
    public string? ColourFilter { get; init; }

    /// <summary>Camera name; null when the header is silent.</summary>
    public string? Camera { get; init; }

    /// <summary>
    /// Label from the capture table that keeps frames apart which would otherwise be pooled; null when none.
    /// </summary>
    internal string? SetLabel { get; init; }

    /// <summary>Gain in e-/ADU as the header claims it: shown for comparison, never used as truth.</summary>
    public double? ClaimedGain { get; init; }

    /// <summary>File size, bytes.</summary>
    internal long FileBytes { get; init; }
}
