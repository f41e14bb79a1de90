namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Masked pixels (optical black): columns to the left of the exposed pixels, rows above them.</summary>
/// <remarks>
/// They share the pedestal, the read noise and, on the left, the row noise of the other pixels; they have no light,
/// glow or defects.
/// </remarks>
public sealed record MaskedBorder
{
    /// <summary>Columns on the left, px. Default 0.</summary>
    public int Left { get; init; }

    /// <summary>Rows at the top, px. Default 0.</summary>
    public int Top { get; init; }

    /// <summary>Their dark current as a share of the mean of the ordinary pixels. Default 1.</summary>
    public double DarkShare { get; init; } = 1;

    /// <summary>Their zero-exposure level minus that of the other pixels, ADU. Default 0.</summary>
    public double LevelOffset { get; init; }
}
