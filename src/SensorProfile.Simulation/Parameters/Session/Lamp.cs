namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>How steady and how even the light of the flats is.</summary>
public sealed record Lamp
{
    /// <summary>
    /// Relative change of the light from one frame of a shot to the next (0.01 = 1 % brighter each time). Default 0.
    /// </summary>
    public double Drift { get; init; }

    /// <summary>Relative standard deviation from frame to frame. Default 0.</summary>
    public double Jitter { get; init; }

    /// <summary>
    /// Relative amplitude of flicker down the rows under a rolling shutter, new phase in each frame, 0…1. Default 0.
    /// </summary>
    public double FlickerAmplitude { get; init; }

    /// <summary>Period of that flicker, rows. Default 100.</summary>
    public double FlickerRows { get; init; } = 100;
}
