namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Stars on the light frames.</summary>
public sealed record Stars
{
    /// <summary>Number per frame. Default 0.</summary>
    public int Count { get; init; }

    /// <summary>Full width at half maximum, px. Default 3.</summary>
    public double FullWidthHalfMaximum { get; init; } = 3;

    /// <summary>
    /// Signal of the brightest star, e-/s; the n-th brightest has 1/n of it. Default 5000.
    /// </summary>
    public double Brightest { get; init; } = 5000;

    /// <summary>Standard deviation of the pointing from frame to frame (dithering), px. Default 0.</summary>
    public double Dither { get; init; }
}
