namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Camera settings written to the headers. They do not affect the pixels.</summary>
public sealed record HeaderSettings
{
    /// <summary>GAIN, the camera's own scale; null to leave it out. Default 100.</summary>
    public double? Gain { get; init; } = 100;

    /// <summary>OFFSET; null to leave it out. Default 30.</summary>
    public double? Offset { get; init; } = 30;

    /// <summary>ISOSPEED; null (default) to leave it out.</summary>
    public double? Iso { get; init; }

    /// <summary>READOUTM; null (default) to leave it out.</summary>
    public string? Readout { get; init; }

    /// <summary>
    /// EGAIN claimed by the maker as a factor on the true gain; null (default) to leave EGAIN out.
    /// </summary>
    public double? ClaimedGainFactor { get; init; }
}
