namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>The sensor's temperature probe and the stability of the cooling.</summary>
public sealed record Thermometer
{
    /// <summary>
    /// Reading of the probe minus temperature of the die, °C. The cooler holds the probe at the set point, so the die
    /// is this much colder than set. Default 0.
    /// </summary>
    public double ProbeOffset { get; init; }

    /// <summary>
    /// Standard deviation of the temperature about its target from frame to frame, °C; the probe follows it. Default 0.
    /// </summary>
    public double Wobble { get; init; }

    /// <summary>
    /// Drift of the temperature within one shot, °C per hour (an uncooled camera warming up). Default 0.
    /// </summary>
    public double DriftPerHour { get; init; }

    /// <summary>Resolution of the reading, °C. Default 0.1; 0 for unlimited.</summary>
    public double Resolution { get; init; } = 0.1;

    /// <summary>Value at which the reading is stuck, °C; null (default) for a working probe.</summary>
    public double? StuckAt { get; init; }

    /// <summary>True when the camera writes the target instead of the reading. Default false.</summary>
    public bool ReportsTarget { get; init; }

    /// <summary>True when frames have no reading. Default false.</summary>
    public bool Missing { get; init; }
}
