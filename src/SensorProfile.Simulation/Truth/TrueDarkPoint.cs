namespace SensorProfile.Simulation.Truth;

/// <summary>True dark current of the sensor at one temperature, from its per-pixel rates.</summary>
internal sealed record TrueDarkPoint
{
    /// <summary>Target temperature: what the probe reads on average, °C.</summary>
    public required double Temperature { get; init; }

    /// <summary>Corresponding temperature of the die, °C.</summary>
    public required double DieTemperature { get; init; }

    /// <summary>Median over all pixels, all effects included, e-/px/s.</summary>
    public required double TypicalRate { get; init; }

    /// <summary>Mean over all pixels, all effects included, e-/px/s.</summary>
    public required double MeanRate { get; init; }

    /// <summary>Rate of the typical ordinary pixel, with the floor, e-/px/s.</summary>
    public required double OrdinaryRate { get; init; }

    /// <summary>Temperature rise that doubles the ordinary pixels' rate there (without the floor), °C.</summary>
    public required double DoublingTemperature { get; init; }
}
