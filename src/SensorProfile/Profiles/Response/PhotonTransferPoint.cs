namespace SensorProfile.Profiles.Response;

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
