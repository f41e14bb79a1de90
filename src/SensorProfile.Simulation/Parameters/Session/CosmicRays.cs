namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Charged particles: straight tracks of up to a few dozen pixels.</summary>
public sealed record CosmicRays
{
    /// <summary>Hits per million pixels per second of exposure. Default 0.</summary>
    public double HitsPerMegapixelSecond { get; init; }

    /// <summary>Mean charge per pixel of a track (exponentially distributed), e-. Default 800.</summary>
    public double ElectronsPerPixel { get; init; } = 800;

    /// <summary>Mean length of a track beyond its first pixel (exponentially distributed), px. Default 4.</summary>
    public double Length { get; init; } = 4;
}
