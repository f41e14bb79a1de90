namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Dark rate at one temperature, as the temperature laws are fitted to it.</summary>
/// <param name="TemperatureCelsius">Sensor temperature as read, °C.</param>
/// <param name="Rate">Dark rate, e-/px/s; may be small or negative where it was not resolved.</param>
/// <param name="Uncertainty">Standard uncertainty of the rate, e-/px/s, positive, without what all points share (the
/// gain).</param>
/// <param name="TemperatureUncertainty">Standard uncertainty of the temperature that is not shared by the other points,
/// °C: read-out step, drift within the set.</param>
internal sealed record TemperaturePoint(
    double TemperatureCelsius,
    double Rate,
    double Uncertainty,
    double TemperatureUncertainty = 0
);
