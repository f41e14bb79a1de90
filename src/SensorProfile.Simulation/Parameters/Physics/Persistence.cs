namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>Charge that light traps, released into later frames.</summary>
/// <remarks>
/// A frame with L photo-electrons traps share·L; what is trapped falls as exp(−t/decay), and what a frame's exposure sees
/// released is its signal.
/// </remarks>
public sealed record Persistence
{
    /// <summary>Part of the photo-electrons that is trapped, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Time constant of the release, s. Default 300.</summary>
    public double Decay { get; init; } = 300;
}
