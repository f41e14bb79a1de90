namespace SensorProfile.Profiles.Darks;

/// <summary>The smallest dark current that the levels of one temperature's darks could have shown.</summary>
public sealed record DarkCurrentLimit
{
    /// <summary>Mean sensor temperature, °C.</summary>
    public double Temperature { get; init; }

    /// <summary>Longest exposure, s: it sets the limit.</summary>
    public double LongestExposure { get; init; }

    /// <summary>
    /// Smallest rate that stands out from the movements of the black level (95 %, one-sided), e-/px/s; null where drift
    /// and exposure cannot be told apart.
    /// </summary>
    public Measurement? Smallest { get; init; }

    /// <summary>
    /// Rise of the level with exposure, with drift in time and temperature removed, e-/px/s; of the typical pixel.
    /// </summary>
    public Measurement? Rate { get; init; }
}
