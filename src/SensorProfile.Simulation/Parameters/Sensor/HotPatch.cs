namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>A growing round patch in which pixels turn hot.</summary>
public sealed record HotPatch
{
    /// <summary>Column of the centre, 1-based.</summary>
    public double X { get; init; } = 1;

    /// <summary>Row of the centre, 1-based.</summary>
    public double Y { get; init; } = 1;

    /// <summary>Growth of the radius, px per year. Default 10.</summary>
    public double RadiusPerYear { get; init; } = 10;

    /// <summary>Share of the pixels inside that turn hot. Default 0.3.</summary>
    public double Density { get; init; } = 0.3;

    /// <summary>
    /// Mean excess rate of its pixels at the reference temperature (exponentially distributed), e-/px/s. Default 0.5.
    /// </summary>
    public double Rate { get; init; } = 0.5;
}
