namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Columns (or rows) that differ from the others, from some pixel to their end.</summary>
public sealed record BadLines
{
    /// <summary>Number of columns (or rows). Default 0.</summary>
    public int Count { get; init; }

    /// <summary>Added dark rate at the reference temperature, e-/px/s. Default 0.</summary>
    public double Rate { get; init; }

    /// <summary>Response to light relative to a good line, 0…10. Default 1.</summary>
    public double Response { get; init; } = 1;

    /// <summary>Added bias level, ADU. Default 0.</summary>
    public double Offset { get; init; }
}
