namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Pixels whose dark current lies far below their neighbours'; their response to light is sound.</summary>
public sealed record ColdPixels
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>
    /// Dark rate relative to what the pixel would show as an ordinary one, 0…1; floor and glow stay. Default 0.
    /// </summary>
    public double RelativeRate { get; init; }
}
