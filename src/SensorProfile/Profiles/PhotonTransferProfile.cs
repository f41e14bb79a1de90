namespace SensorProfile.Profiles;

/// <summary>The points behind gain, saturation and linearity.</summary>
public sealed record PhotonTransferProfile
{
    /// <summary>One entry per channel ("all" for monochrome).</summary>
    public IReadOnlyList<PhotonTransferCurve> Curves { get; init; } = [];
}

/// <summary>The photon-transfer curve of one channel.</summary>
public sealed record PhotonTransferCurve
{
    /// <summary>R, G1, G2, B, or "all".</summary>
    public string Channel { get; init; } = "all";

    /// <summary>One point per flat pair.</summary>
    public IReadOnlyList<PhotonTransferPoint> Points { get; init; } = [];

    /// <summary>Slope K of σ² − σ²_dark against μ − μ_dark, ADU/e-.</summary>
    public Measurement? Slope { get; init; }

    /// <summary>Intercept of that line, ADU²; should agree with zero.</summary>
    public Measurement? Intercept { get; init; }

    /// <summary>Curvature a of σ² = Kμ(1 + aμ), 1/ADU; null when it was not needed or could not be fitted.</summary>
    public Measurement? Curvature { get; init; }

    /// <summary>Gain from the straight line, e-/ADU.</summary>
    public Measurement? GainStraight { get; init; }

    /// <summary>Gain from the curved fit, e-/ADU; null when it could not be fitted.</summary>
    public Measurement? GainCurved { get; init; }

    /// <summary>"straight" or "curved": which of the two the reported gain comes from.</summary>
    public string Selected { get; init; } = "straight";

    /// <summary>Upper end of the fitted range, ADU above dark.</summary>
    public double FitLimit { get; init; }

    /// <summary>"adc" when the codes end first, "pixel" when the variance falls before that, null when saturation was not reached.</summary>
    public string? SaturatedBy { get; init; }
}

/// <summary>One flat pair of one channel.</summary>
public sealed record PhotonTransferPoint
{
    /// <summary>Exposure, s; null when unknown.</summary>
    public double? Exposure { get; init; }

    /// <summary>μ − μ_dark, ADU.</summary>
    public double Signal { get; init; }

    /// <summary>Standard uncertainty of the signal, ADU.</summary>
    public double SignalUncertainty { get; init; }

    /// <summary>σ² − σ²_dark, ADU².</summary>
    public double Variance { get; init; }

    /// <summary>Standard uncertainty of the variance, ADU².</summary>
    public double VarianceUncertainty { get; init; }

    /// <summary>Whether the point entered the gain fit.</summary>
    public bool InGainFit { get; init; }

    /// <summary>Whether the point entered the linearity fit.</summary>
    public bool InLinearityFit { get; init; }

    /// <summary>Deviation from the linearity line, %; null when not in that fit.</summary>
    public double? LinearityDeviation { get; init; }

    /// <summary>The two files of the pair.</summary>
    public IReadOnlyList<string> Frames { get; init; } = [];
}

/// <summary>How the temporal noise of the single pixels is distributed.</summary>
public sealed record NoiseDistribution
{
    /// <summary>Bias frames behind it.</summary>
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
