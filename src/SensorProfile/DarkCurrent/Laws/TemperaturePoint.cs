namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Dark rate at one temperature, a point for fitting temperature laws.</summary>
/// <param name="TemperatureCelsius">Sensor temperature as read, °C.</param>
/// <param name="Rate">Dark rate, e-/px/s; may be small or negative if not resolved.</param>
/// <param name="Uncertainty">Standard uncertainty of the rate, e-/px/s, positive, without the part common to all points
/// (the gain).</param>
/// <param name="TemperatureUncertainty">Standard uncertainty of the temperature that other points do not share, °C:
/// probe resolution, drift within the set.</param>
internal sealed record TemperaturePoint(
    double TemperatureCelsius,
    double Rate,
    double Uncertainty,
    double TemperatureUncertainty = 0
)
{
    /// <summary>
    /// Errors of this temperature that points share, one for each cause, of one standard uncertainty, °C; all points name
    /// the same causes in the same order.
    /// </summary>
    public IReadOnlyList<double> SharedErrors { get; init; } = [];
}
