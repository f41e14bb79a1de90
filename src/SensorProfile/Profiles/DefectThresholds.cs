namespace SensorProfile.Profiles;

/// <summary>Thresholds of the defect search; inputs of the measurement.</summary>
public sealed record DefectThresholds
{
    /// <summary>Hot above the typical pixel by this, e-/px/s at the reference temperature.</summary>
    public double HotRate { get; init; }

    /// <summary>Warm above the typical pixel by this, e-/px/s at the reference temperature.</summary>
    public double WarmRate { get; init; }

    /// <summary>… and by this many of the pixel's own standard errors.</summary>
    public double Significance { get; init; } = 6;

    /// <summary>Flickering: temporal standard deviation above the camera's median by this factor.</summary>
    public double NoiseFactor { get; init; } = 3;

    /// <summary>Dead: response below this share of the neighbourhood.</summary>
    public double DeadResponse { get; init; } = 0.5;
}
