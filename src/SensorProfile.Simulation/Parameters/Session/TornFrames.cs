namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Torn frames: from some row on they have neither light nor dark signal.</summary>
public sealed record TornFrames
{
    /// <summary>Probability that a frame (bias excepted) is torn, 0…1. Default 0.</summary>
    public double Share { get; init; }
}
