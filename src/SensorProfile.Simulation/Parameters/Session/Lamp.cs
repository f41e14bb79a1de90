namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Stability and evenness of the light of the flats.</summary>
public sealed record Lamp
{
    /// <summary>
    /// Relative change of the light from one frame of a shot to the next (0.01 = 1 % brighter each time). Default 0.
    /// </summary>
    public double Drift { get; init; }

    /// <summary>Relative standard deviation from frame to frame. Default 0.</summary>
    public double Jitter { get; init; }

    /// <summary>
    /// Relative amplitude of flicker from row to row under a rolling shutter, with a new phase in each frame, 0…1.
    /// Default 0.
    /// </summary>
    public double FlickerAmplitude { get; init; }

    /// <summary>Period of that flicker, rows. Default 100.</summary>
    public double FlickerRows { get; init; } = 100;
}
