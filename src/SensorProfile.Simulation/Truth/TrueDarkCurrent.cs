namespace SensorProfile.Simulation.Truth;

/// <summary>True dark current.</summary>
internal sealed record TrueDarkCurrent
{
    /// <summary>Temperature for which the rates hold, °C of the die.</summary>
    public required double ReferenceTemperature { get; init; }

    /// <summary>
    /// Rate of the typical ordinary pixel at the reference temperature of the die, floor included, glow and defects
    /// not, e-/px/s.
    /// </summary>
    public required double RateAtReference { get; init; }

    /// <summary>
    /// The same when the probe reads the reference temperature, e-/px/s: what frames and their headers show.
    /// </summary>
    public required double RateAtReferenceReading { get; init; }

    /// <summary>
    /// Temperature rise that doubles the typical ordinary pixel's rate (floor not included) at the reference
    /// temperature, °C.
    /// </summary>
    public required double DoublingTemperature { get; init; }

    /// <summary>
    /// Exposure for which the maps and the rates of the points hold, s; matters only for glow that is not in proportion
    /// to the exposure.
    /// </summary>
    public required double MapExposure { get; init; }

    /// <summary>The whole sensor at every temperature of the night.</summary>
    public required IReadOnlyList<TrueDarkPoint> Points { get; init; }
}
