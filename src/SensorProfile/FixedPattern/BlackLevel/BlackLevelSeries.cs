namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>What the darks of one temperature say of the dark current by other means than their level.</summary>
/// <param name="TemperatureCelsius">Mean, °C.</param>
/// <param name="LongestSeconds">Longest exposure, s.</param>
/// <param name="FromNoise">Dark current by the growth of the noise, e-/px/s; null without pairs.</param>
/// <param name="MeanAboveTypical">Rate of the mean pixel less that of the median pixel, e-/px/s; 0 or more.</param>
/// <param name="Expected">Rate of the typical pixel by the law of the whole sensor, or by the noise where there is no
/// law, e-/px/s; null without either.</param>
internal sealed record BlackLevelSeries(
    double TemperatureCelsius,
    double LongestSeconds,
    Measurement? FromNoise,
    double MeanAboveTypical,
    double? Expected
)
{
    /// <summary>Rate that a profile without regard to drift gives, e-/px/s; null where it gives none.</summary>
    public Measurement? Plain { get; init; }
}
