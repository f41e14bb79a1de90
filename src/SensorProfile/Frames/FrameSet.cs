using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames;

/// <summary>
/// Frames that may be pooled: same kind, settings, size, exposure, and sensor temperature within the tolerance.
/// </summary>
public sealed record FrameSet
{
    /// <summary>The kind of the frames.</summary>
    public required FrameKind Kind { get; init; }

    /// <summary>Gain, offset, ISO, binning and read-out mode.</summary>
    public required ModeSettings Settings { get; init; }

    /// <summary>Frame width, px.</summary>
    public required int Width { get; init; }

    /// <summary>Frame height, px.</summary>
    public required int Height { get; init; }

    /// <summary>Exposure, s; null when unknown.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>Mean sensor temperature as read, °C; null when unknown.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Label from the capture table; null when none.</summary>
    public string? Label { get; init; }

    /// <summary>Which darks of a night without a thermometer they belong to; null where a night is one.</summary>
    internal WarmthGroup? Warmth { get; init; }

    /// <summary>What typed readings leave open about the temperature; null where it does not come from a night's readings.</summary>
    internal TypedScale? TypedScale { get; init; }

    /// <summary>The frames, in order of time, then of name.</summary>
    public required IReadOnlyList<Frame> Frames { get; init; }
}
