namespace SensorProfile.NoiseModel;

/// <summary>The darks that a stack is calibrated with.</summary>
internal sealed record DarkFrames
{
    /// <summary>Exposure of one dark, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Sensor temperature of the darks, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Frames averaged into the master dark, n.</summary>
    public required int Frames { get; init; }

    /// <summary>
    /// Whether the master is scaled to the lights by the law of the typical pixel: light − bias − s·(dark − bias).
    /// </summary>
    public bool Scaled { get; init; }

    /// <summary>
    /// Frames averaged into the master bias; needed for scaled darks only, because the bias cancels otherwise.
    /// </summary>
    public int BiasFrames { get; init; }
}
