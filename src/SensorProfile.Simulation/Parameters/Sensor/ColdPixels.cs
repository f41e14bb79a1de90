namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Pixels with a dark current far below their neighbours' but a normal response to light.</summary>
public sealed record ColdPixels
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>
    /// Dark rate as a share of the pixel's rate as an ordinary one, 0…1; floor and glow are unaffected. Default 0.
    /// </summary>
    public double RelativeRate { get; init; }
}
