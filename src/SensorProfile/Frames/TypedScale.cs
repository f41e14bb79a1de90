namespace SensorProfile.Frames;

/// <summary>What the thermometer readings typed in for a night leave open about all its temperatures in common.</summary>
/// <param name="MeanCelsius">Mean of the readings, °C, about which the scale turns.</param>
/// <param name="OffsetUncertainty">Standard uncertainty of that mean, °C.</param>
/// <param name="ScaleUncertainty">Relative standard uncertainty of differences from it.</param>
internal sealed record TypedScale(double MeanCelsius, double OffsetUncertainty, double ScaleUncertainty)
{
    /// <summary>Standard uncertainty of one reading of a glass thermometer beside a camera, °C (common practice, no source).</summary>
    public const double ReadingDoubt = 0.5;
}
