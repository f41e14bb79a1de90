using SensorProfile.Frames.Capture;

namespace SensorProfile.Frames.Survey;

/// <summary>Options of an inventory.</summary>
public sealed record InventoryOptions
{
    /// <summary>Half-width of a frame set in temperature, °C.</summary>
    public const double DefaultTemperatureTolerance = 0.5;

    /// <summary>Corrections to the headers; they override everything else. Null when there are none.</summary>
    public CaptureTable? Table { get; init; }

    /// <summary>
    /// Whether file and folder names may give the kind of a frame when neither header nor table does.
    /// </summary>
    public bool NamesSay { get; init; }

    /// <summary>
    /// Frames are pooled when their sensor temperatures lie within this distance of their set's mean, °C.
    /// </summary>
    public double TemperatureTolerance { get; init; } = DefaultTemperatureTolerance;

    /// <summary>Number of files read at the same time; the result does not depend on it.</summary>
    public int MaxParallelism { get; init; } = Math.Max(2, Environment.ProcessorCount);
}
