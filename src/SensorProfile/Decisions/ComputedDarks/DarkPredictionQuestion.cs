using SensorProfile.Frames;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>I have no dark that fits: compute one.</summary>
public sealed record DarkPredictionQuestion
{
    /// <summary>Sensor temperature of the lights, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Exposure of the lights, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>The folder <c>maps</c> that belongs to the profile.</summary>
    public required string MapsFolder { get; init; }

    /// <summary>
    /// Frame sets in which to look for fresh darks of that temperature and exposure, to check the result; null for no
    /// such check.
    /// </summary>
    public IReadOnlyList<FrameSet>? Against { get; init; }
}
