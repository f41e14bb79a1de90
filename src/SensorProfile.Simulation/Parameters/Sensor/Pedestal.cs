namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>How the bias level changes.</summary>
public sealed record Pedestal
{
    /// <summary>Standard deviation from frame to frame, ADU. Default 0.</summary>
    public double Jitter { get; init; }

    /// <summary>Drift with time since the first frame, ADU per hour. Default 0.</summary>
    public double DriftPerHour { get; init; }

    /// <summary>Drift with the sensor temperature, ADU per °C above the reference temperature. Default 0.</summary>
    public double DriftPerDegree { get; init; }

    /// <summary>
    /// Step in which the level moves, ADU (for a level that moves in whole codes, say); 0 (default) for none.
    /// </summary>
    public double Step { get; init; }
}
