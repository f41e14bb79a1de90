namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>Traps that switch between two states: steps and dwell times differ from trap to trap.</summary>
/// <remarks>
/// Steps are exponentially distributed over the traps (as found for read-out traps); mean dwell times are log-normal
/// and thermally activated: τ(T) = τ_ref·exp(E/k·(1/T − 1/T_ref)). Bulk traps add a dark rate instead of a level.
/// </remarks>
public sealed record SwitchingTraps
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Mean step at read-out over the traps, e-. Default 0.</summary>
    public double Step { get; init; }

    /// <summary>
    /// Mean over the traps of the dark rate added in the high state, at the reference temperature, e-/px/s. Default 0.
    /// </summary>
    public double RateStep { get; init; }

    /// <summary>Activation energy of that dark rate, eV. Default 0.6.</summary>
    public double RateEnergy { get; init; } = 0.6;

    /// <summary>
    /// Median over the traps of the mean dwell time in the high state at the reference temperature, s. Default 60.
    /// </summary>
    public double DwellHigh { get; init; } = 60;

    /// <summary>
    /// Median over the traps of the mean dwell time in the low state at the reference temperature, s. Default 120.
    /// </summary>
    public double DwellLow { get; init; } = 120;

    /// <summary>Spread of ln(dwell time) over the traps. Default 1.5.</summary>
    public double DwellSpread { get; init; } = 1.5;

    /// <summary>Activation energy of both dwell times, eV. Default 0: they do not depend on temperature.</summary>
    public double DwellEnergy { get; init; }
}
