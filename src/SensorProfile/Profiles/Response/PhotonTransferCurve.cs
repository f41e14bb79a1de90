namespace SensorProfile.Profiles.Response;

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

    /// <summary>Which of the two the reported gain is taken from.</summary>
    public GainForm Selected { get; init; }

    /// <summary>Upper end of the fitted range, ADU above dark.</summary>
    public double FitLimit { get; init; }

    /// <summary>What ends the signal first; null when saturation was not reached.</summary>
    public SaturationCause? SaturatedBy { get; init; }
}
