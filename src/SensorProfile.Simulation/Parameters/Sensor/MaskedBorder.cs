namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Pixels under a mask (optical black): columns left of the pixels that see light, rows above them.</summary>
/// <remarks>They share pedestal, read noise and, on the left, the row noise with the others; no light, no glow, no
/// defects.</remarks>
public sealed record MaskedBorder
{
    /// <summary>Columns on the left, px. Default 0.</summary>
    public int Left { get; init; }

    /// <summary>Rows at the top, px. Default 0.</summary>
    public int Top { get; init; }

    /// <summary>Their dark current as a share of the mean of the ordinary pixels. Default 1.</summary>
    public double DarkShare { get; init; } = 1;

    /// <summary>Their level without exposure less that of the other pixels, ADU. Default 0.</summary>
    public double LevelOffset { get; init; }
}
