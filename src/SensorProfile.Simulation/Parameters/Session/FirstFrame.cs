namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>How the first frame of each shot, after a pause, differs from the others.</summary>
public sealed record FirstFrame
{
    /// <summary>Added to its bias level, ADU. Default 0.</summary>
    public double Offset { get; init; }

    /// <summary>Factor on its dark signal and glow. Default 1.</summary>
    public double DarkFactor { get; init; } = 1;
}
