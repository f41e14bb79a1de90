namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Dark current at one temperature from sources other than the level.</summary>
/// <param name="TemperatureCelsius">Mean temperature, °C.</param>
/// <param name="LongestSeconds">Longest exposure, s.</param>
/// <param name="FromNoise">Dark current from the growth of the noise, e-/px/s; null without pairs.</param>
/// <param name="MeanAboveTypical">Rate of the mean pixel minus that of the median pixel, e-/px/s; not negative.</param>
/// <param name="Expected">Rate of the typical pixel from the temperature law of the sensor, or from the noise if there
/// is no law, e-/px/s; null without either.</param>
internal sealed record BlackLevelSeries(
    double TemperatureCelsius,
    double LongestSeconds,
    Measurement? FromNoise,
    double MeanAboveTypical,
    double? Expected
)
{
    /// <summary>Rate without regard to drift, e-/px/s; null when there is none.</summary>
    public Measurement? Plain { get; init; }
}
