namespace SensorProfile.FixedPattern.Input;

/// <summary>The darks of one temperature: what a line against exposure may be drawn through.</summary>
/// <param name="TemperatureCelsius">Mean sensor temperature, °C.</param>
/// <param name="TypicalRate">Rate of the typical pixel there, e-/px/s; 0 where it could not be resolved.</param>
/// <param name="Exposures">Ascending, one entry per exposure or set.</param>
internal sealed record DarkSeries(double TemperatureCelsius, double TypicalRate, IReadOnlyList<DarkExposure> Exposures)
{
    /// <summary>
    /// By how much the median of noisy pixels lies above the rate of the typical one, e-/px/s, by channel, exposure in
    /// s and variance of a pixel without signal in e-²; null where that is not known.
    /// </summary>
    public Func<int, double, double, double>? MedianShift { get; init; }
}
