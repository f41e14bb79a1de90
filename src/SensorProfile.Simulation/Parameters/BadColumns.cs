namespace SensorProfile.Simulation.Parameters;

/// <summary>Columns that differ from the rest from one row on.</summary>
public sealed record BadColumns
{
    /// <summary>Number of columns. Default 0.</summary>
    public int Count { get; init; }

    /// <summary>Dark rate added at the reference temperature, e-/px/s. Default 0.</summary>
    public double Rate { get; init; }

    /// <summary>Response to light relative to a sound column, 0…1. Default 1.</summary>
    public double Response { get; init; } = 1;

    /// <summary>Bias level added, ADU. Default 0.</summary>
    public double Offset { get; init; }
}
