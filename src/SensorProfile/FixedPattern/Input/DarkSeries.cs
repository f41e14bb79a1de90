namespace SensorProfile.FixedPattern.Input;

/// <summary>The darks of one temperature, for a line against exposure.</summary>
/// <param name="TemperatureCelsius">Mean sensor temperature, °C.</param>
/// <param name="TypicalRate">Rate of the typical pixel at this temperature, e-/px/s; 0 when not resolved.</param>
/// <param name="Exposures">One entry per exposure or set, in ascending order of exposure.</param>
internal sealed record DarkSeries(double TemperatureCelsius, double TypicalRate, IReadOnlyList<DarkExposure> Exposures)
{
    /// <summary>
    /// How far the median of noisy pixels lies above the rate of the typical one, e-/px/s, as a function of channel,
    /// exposure in s and variance of a pixel without signal in e-²; null when unknown.
    /// </summary>
    public Func<int, double, double, double>? MedianShift { get; init; }
}
