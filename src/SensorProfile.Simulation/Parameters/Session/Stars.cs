namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Stars on the light frames.</summary>
public sealed record Stars
{
    /// <summary>Number on the frame. Default 0.</summary>
    public int Count { get; init; }

    /// <summary>Full width at half maximum, px. Default 3.</summary>
    public double FullWidthHalfMaximum { get; init; } = 3;

    /// <summary>
    /// Electrons of the brightest per second; the n-th brightest has this divided by n. Default 5000 e-/s.
    /// </summary>
    public double Brightest { get; init; } = 5000;

    /// <summary>Standard deviation of the pointing from frame to frame (dithering), px. Default 0.</summary>
    public double Dither { get; init; }
}
