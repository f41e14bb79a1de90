namespace SensorProfile.Frames.Capture;

/// <summary>
/// One row of the capture table; a property is null where the cell is empty, and the header's value holds.
/// </summary>
public sealed record CaptureRow
{
    /// <summary>File as the table names it, with forward slashes.</summary>
    public required string File { get; init; }

    /// <summary>Line of the table, 1-based; 0 for a row that was not read from a file.</summary>
    internal int Line { get; init; }

    /// <summary>What the frame was taken for.</summary>
    internal FrameKind? Kind { get; init; }

    /// <summary>Exposure, s.</summary>
    internal double? ExposureSeconds { get; init; }

    /// <summary>Sensor temperature, °C.</summary>
    internal double? TemperatureCelsius { get; init; }

    /// <summary>Gain setting.</summary>
    internal double? Gain { get; init; }

    /// <summary>Offset setting.</summary>
    internal double? Offset { get; init; }

    /// <summary>ISO setting.</summary>
    internal double? Iso { get; init; }

    /// <summary>Binning, "1x1", "2x2" …</summary>
    internal string? Binning { get; init; }

    /// <summary>Label that separates frames which would otherwise be pooled.</summary>
    internal string? Set { get; init; }

    /// <summary>False leaves the frame out.</summary>
    internal bool Use { get; init; } = true;
}
