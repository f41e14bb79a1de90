using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames;

/// <summary>One frame as its header and the capture table describe it, before any pixel is read.</summary>
public sealed record Frame
{
    /// <summary>Full path.</summary>
    public required string Path { get; init; }

    /// <summary>
    /// Name shown to the user and written to profiles: relative to the given folder, with forward slashes.
    /// </summary>
    public required string Name { get; init; }

    /// <summary>File format.</summary>
    internal FrameFormat Format { get; init; }

    /// <summary>The kind of frame.</summary>
    public FrameKind Kind { get; init; }

    /// <summary>Exposure, s; null when unknown.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>
    /// Sensor temperature as read by the sensor's probe, °C; null when missing, a sentinel, stuck or impossible.
    /// </summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Where the temperature comes from.</summary>
    internal TemperatureOrigin TemperatureOrigin { get; init; }

    /// <summary>
    /// Set temperature of the cooler, °C; null when not stated. Never used in place of the reading.
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

    /// <summary>
    /// All stored samples of a raw file and which of them are exposed to light; null for other files.
    /// </summary>
    internal SensorArea? Sensor { get; init; }

    /// <summary>
    /// Size, and first row and column on the sensor, if the file states them: only frames that agree in all of them
    /// show the same pixels.
    /// </summary>
    internal (int Width, int Height, int Top, int Left) Place =>
        (Width, Height, Sensor?.Active.Top ?? 0, Sensor?.Active.Left ?? 0);

    /// <summary>Index of the HDU with the image, in a FITS file.</summary>
    public int Hdu { get; init; }

    /// <summary>
    /// Colour filter array in file order (first row of the file first), for example "RGGB", with offsets and row order
    /// applied; null for monochrome.
    /// </summary>
    public string? ColourFilter { get; init; }

    /// <summary>Camera name; null when the header does not state it.</summary>
    public string? Camera { get; init; }

    /// <summary>
    /// Label from the capture table that separates frames which would otherwise be pooled; null when none.
    /// </summary>
    internal string? SetLabel { get; init; }

    /// <summary>Gain in e-/ADU claimed by the header: shown for comparison, never trusted.</summary>
    public double? ClaimedGain { get; init; }

    /// <summary>File size, bytes.</summary>
    internal long FileBytes { get; init; }
}
