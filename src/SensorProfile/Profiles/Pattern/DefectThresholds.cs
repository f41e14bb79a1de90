namespace SensorProfile.Profiles.Pattern;

/// <summary>Thresholds of the defect search; inputs of the measurement.</summary>
public sealed record DefectThresholds
{
    /// <summary>Hot: dark rate above the typical pixel's by this, e-/px/s at the reference temperature.</summary>
    public double HotRate { get; init; }

    /// <summary>Warm: dark rate above the typical pixel's by this, e-/px/s at the reference temperature.</summary>
    public double WarmRate { get; init; }

    /// <summary>Hot, warm and cold: also this many of the pixel's own standard errors from the typical pixel.</summary>
    public double Significance { get; init; } = 6;

    /// <summary>
    /// Flickering: temporal standard deviation above the camera's median by this factor, or falling into levels (see
    /// the false alarms).
    /// </summary>
    public double NoiseFactor { get; init; } = 3;

    /// <summary>
    /// Level test of flickering pixels: how many pixels with normal noise, of up to the noise factor times the
    /// camera's, may pass for flickering, per million pixels of the sensor.
    /// </summary>
    public double FlickerFalseAlarms { get; init; } = 1;

    /// <summary>
    /// Cold: dark rate below this share of the typical pixel's, by as many standard errors as the significance says.
    /// </summary>
    public double ColdShare { get; init; } = 0.2;

    /// <summary>Cold or dead: response to light below this share of the neighbourhood's.</summary>
    public double DeadResponse { get; init; } = 0.5;

    /// <summary>Dead: response to light below this share of the neighbourhood's.</summary>
    public double NoResponse { get; init; } = 0.1;

    /// <summary>
    /// What makes no sense in these thresholds, as a sentence; null when nothing does. Rates of 0 are chosen from the
    /// frames.
    /// </summary>
    internal string? Problem()
    {
        if (!(HotRate >= 0 && WarmRate >= 0 && double.IsFinite(HotRate + WarmRate)))
            return "hotRate and warmRate must be positive, or 0 to have them chosen from the frames.";
        if (HotRate > 0 && WarmRate > HotRate)
            return "warmRate lies above hotRate.";
        if (!(Significance > 0 && double.IsFinite(Significance)))
            return "significance must be above 0.";
        if (!(NoiseFactor > 1 && double.IsFinite(NoiseFactor)))
            return "noiseFactor must be above 1.";
        if (!(FlickerFalseAlarms > 0 && FlickerFalseAlarms < 1e6))
            return "flickerFalseAlarms must lie between 0 and a million.";
        if (!(ColdShare >= 0 && ColdShare < 1))
            return "coldShare must lie between 0 and 1.";
        return NoResponse >= 0 && NoResponse <= DeadResponse && DeadResponse < 1
            ? null
            : "noResponse must not lie above deadResponse, and both between 0 and 1.";
    }
}
