namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>Persistence: charge trapped under light and released into later frames.</summary>
/// <remarks>
/// A frame with L photo-electrons traps share·L; the trapped charge decays as exp(−t/decay), and the part released
/// during an exposure is signal in that frame.
/// </remarks>
public sealed record Persistence
{
    /// <summary>Share of the photo-electrons that is trapped, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Time constant of the release, s. Default 300.</summary>
    public double Decay { get; init; } = 300;
}
