namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>
/// Hot pixels: a share of the pixels with a rate above the ordinary ones', each with its own temperature law.
/// </summary>
public sealed record HotPixels
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Distribution of their excess rates at the reference temperature.</summary>
    public HotPixelDistribution Distribution { get; init; } = new();

    /// <summary>
    /// Mean activation energy relative to the ordinary pixels' (1 = the same law; 0.9 = doubles over 1/0.9 of the
    /// temperature rise). Default 1.
    /// </summary>
    public double Activation { get; init; } = 1;

    /// <summary>
    /// Standard deviation of that relative activation energy from pixel to pixel; values are limited to 0.3…3. Default
    /// 0.
    /// </summary>
    public double ActivationSpread { get; init; }
}
