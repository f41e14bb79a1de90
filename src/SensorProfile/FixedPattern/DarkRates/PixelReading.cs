namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>One pixel as its darks show it.</summary>
/// <param name="Rate">At the reference temperature, e-/px/s.</param>
/// <param name="Uncertainty">Standard uncertainty, e-/px/s.</param>
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
    /// <summary>Correlation of ln rate and activation in the pixel's own law; not a number without one.</summary>
    public float Correlation { get; init; } = float.NaN;
}
