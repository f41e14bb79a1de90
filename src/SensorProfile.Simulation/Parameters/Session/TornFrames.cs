namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Frames whose rows from some row on carry no exposure: neither light nor dark signal.</summary>
public sealed record TornFrames
{
    /// <summary>Probability that a frame (bias excepted) is torn, 0…1. Default 0.</summary>
    public double Share { get; init; }
}
