namespace SensorProfile.PhotonTransfer;

/// <summary>What was measured on one flat pair in one channel, before any fit.</summary>
internal sealed record FlatPairPoint
{
    /// <summary>Exposure, s; null when unknown.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>Signal above the pedestal that belongs to <see cref="Variance"/>, ADU.</summary>
    /// <remarks>
    /// For a second frame scaled by ρ: A(1 + ρ)/(1 + ρ²), the mean A when the two frames are equally bright.
    /// </remarks>
    public required double Signal { get; init; }

    /// <summary>Mean signal of the two frames above the pedestal, ADU; linearity is judged by it.</summary>
    public required double MeanSignal { get; init; }

    /// <summary>Temporal variance of one frame, ADU², including read noise.</summary>
    public required double Variance { get; init; }

    /// <summary>Pixels behind the variance.</summary>
    public required long Pixels { get; init; }

    /// <summary>Share of the channel's pixels at its top code, 0…1.</summary>
    public double TopCodeShare { get; init; }

    /// <summary>Brightness of the second frame over the first.</summary>
    public double LightRatio { get; init; } = 1;

    /// <summary>
    /// Whether signal and variance are finite; they are not for a colour without light or with stuck pixels only.
    /// </summary>
    public bool IsFinite =>
        double.IsFinite(Signal)
        && double.IsFinite(MeanSignal)
        && double.IsFinite(Variance)
        && double.IsFinite(LightRatio)
        && double.IsFinite(TopCodeShare);

    /// <summary>The two files.</summary>
    public IReadOnlyList<string> Frames { get; init; } = [];
}
