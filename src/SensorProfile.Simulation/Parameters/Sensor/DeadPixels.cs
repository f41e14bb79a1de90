namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Pixels that hardly respond to light.</summary>
public sealed record DeadPixels
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Response to light relative to a good pixel, 0…1. Default 0.</summary>
    public double Response { get; init; }
}
