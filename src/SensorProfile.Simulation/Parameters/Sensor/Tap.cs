namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>
/// A part of the sensor with its own amplifier: all pixels from a given column and row on.
/// </summary>
public sealed record Tap
{
    /// <summary>First column, 1-based as FITS counts. Default 1.</summary>
    public int FirstColumn { get; init; } = 1;

    /// <summary>First row, 1-based. Default 1.</summary>
    public int FirstRow { get; init; } = 1;

    /// <summary>Added bias level, ADU. Default 0.</summary>
    public double Offset { get; init; }

    /// <summary>Response to light relative to the rest. Default 1.</summary>
    public double Response { get; init; } = 1;

    /// <summary>Read noise relative to the rest. Default 1.</summary>
    public double Noise { get; init; } = 1;

    /// <summary>Whether a pixel belongs to this tap.</summary>
    internal bool Holds(int row, int column) => column >= FirstColumn - 1 && row >= FirstRow - 1;
}
