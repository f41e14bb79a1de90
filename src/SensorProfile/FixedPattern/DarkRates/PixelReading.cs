namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Results for one pixel from its darks.</summary>
/// <param name="Rate">Rate at the reference temperature, e-/px/s.</param>
/// <param name="Uncertainty">Standard uncertainty of the rate, e-/px/s.</param>
/// <param name="Doubling">°C; not a number when not measured.</param>
/// <param name="DoublingUncertainty">°C.</param>
/// <param name="Flags">Flags.</param>
internal readonly record struct PixelReading(
    float Rate,
    float Uncertainty,
    float Doubling,
    float DoublingUncertainty,
    PixelFlags Flags
)
{
    /// <summary>Correlation of ln rate and activation in the law of the pixel; not a number without a law.</summary>
    public float Correlation { get; init; } = float.NaN;
}
