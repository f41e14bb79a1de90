namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>
/// Groups of hot pixels connected by their edges; no two groups touch. They exist from the first year and do not heal.
/// </summary>
public sealed record HotClusters
{
    /// <summary>Number of groups. Default 0.</summary>
    public int Count { get; init; }

    /// <summary>Pixels per group. Default 4.</summary>
    public int Size { get; init; } = 4;

    /// <summary>
    /// Excess rate of each pixel at the reference temperature, e-/px/s; follows the law of the hot pixels. Default 1.
    /// </summary>
    public double Rate { get; init; } = 1;
}
