namespace SensorProfile.Simulation.Truth;

/// <summary>True dark current.</summary>
internal sealed record TrueDarkCurrent
{
    /// <summary>Temperature of the die at which the rates hold, °C.</summary>
    public required double ReferenceTemperature { get; init; }

    /// <summary>
    /// Rate of the typical ordinary pixel at the reference temperature of the die, with the floor but without glow and
    /// defects, e-/px/s.
    /// </summary>
    public required double RateAtReference { get; init; }

    /// <summary>
    /// The same when the probe reads the reference temperature, e-/px/s: what frames and their headers show.
    /// </summary>
    public required double RateAtReferenceReading { get; init; }

    /// <summary>
    /// Temperature rise that doubles the typical ordinary pixel's rate (without the floor) at the reference
    /// temperature, °C.
    /// </summary>
    public required double DoublingTemperature { get; init; }

    /// <summary>
    /// Exposure at which the maps and the rates of the points hold, s; matters only for glow that is not proportional
    /// to the exposure.
    /// </summary>
    public required double MapExposure { get; init; }

    /// <summary>The whole sensor at each temperature of the night.</summary>
    public required IReadOnlyList<TrueDarkPoint> Points { get; init; }
}
