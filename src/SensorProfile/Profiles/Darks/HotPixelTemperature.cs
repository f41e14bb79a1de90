namespace SensorProfile.Profiles.Darks;

/// <summary>
/// The sensor temperature of one set of darks according to its hot pixels: their common brightness is a thermometer on
/// the die itself.
/// </summary>
public sealed record HotPixelTemperature
{
    /// <summary>Mean temperature of the frames as the probe read it, °C.</summary>
    public double Reading { get; init; }

    /// <summary>Exposure, s.</summary>
    public double Exposure { get; init; }

    /// <summary>Number of frames.</summary>
    public int Frames { get; init; }

    /// <summary>
    /// Mean temperature by the hot pixels minus the mean reading, °C, relative to the longest exposure at the same
    /// temperature (which is 0 by definition).
    /// </summary>
    public Measurement? Difference { get; init; }

    /// <summary>Change from the first to the last frame by the hot pixels, °C.</summary>
    public Measurement? Drift { get; init; }

    /// <summary>Change from the first to the last frame by the probe, °C; null when it gave no reading.</summary>
    public double? ReadingDrift { get; init; }

    /// <summary>Scatter of the single frames' temperature by the hot pixels about their line in time, °C.</summary>
    public double Scatter { get; init; }
}
