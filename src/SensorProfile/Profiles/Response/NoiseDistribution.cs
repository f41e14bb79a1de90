namespace SensorProfile.Profiles.Response;

/// <summary>How the temporal noise of the single pixels is distributed.</summary>
public sealed record NoiseDistribution
{
    /// <summary>Number of bias frames.</summary>
    public int Frames { get; init; }

    /// <summary>ADU or e- (e- when the gain is known).</summary>
    public string Unit { get; init; } = "ADU";

    /// <summary>Median over pixels of the temporal standard deviation.</summary>
    public double Median { get; init; }

    /// <summary>Mean over pixels.</summary>
    public double Mean { get; init; }

    /// <summary>Root of the mean square over pixels.</summary>
    public double Rms { get; init; }

    /// <summary>90th percentile.</summary>
    public double Percentile90 { get; init; }

    /// <summary>99th percentile.</summary>
    public double Percentile99 { get; init; }

    /// <summary>99.9th percentile.</summary>
    public double Percentile999 { get; init; }

    /// <summary>Lower edges of the histogram bins, in <see cref="Unit"/>.</summary>
    public IReadOnlyList<double> BinEdges { get; init; } = [];

    /// <summary>Pixels in each bin.</summary>
    public IReadOnlyList<long> Counts { get; init; } = [];
}
