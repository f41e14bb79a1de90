using SensorProfile.Frames.Capture;

namespace SensorProfile.Frames.Survey;

/// <summary>How an inventory is taken.</summary>
public sealed record InventoryOptions
{
    /// <summary>Half-width of a frame set in temperature, °C.</summary>
    public const double DefaultTemperatureTolerance = 0.5;

    /// <summary>Corrections to the headers; they win over everything else. Null when there are none.</summary>
    public CaptureTable? Table { get; init; }

    /// <summary>Whether file and folder names may say the kind of a frame whose header and table row do not.</summary>
    public bool NamesSay { get; init; }

    /// <summary>Frames are pooled when their sensor temperatures lie within this of their set's mean, °C.</summary>
    public double TemperatureTolerance { get; init; } = DefaultTemperatureTolerance;

    /// <summary>Files read at the same time; the result does not depend on it.</summary>
    public int MaxParallelism { get; init; } = Math.Max(2, Environment.ProcessorCount);
}
