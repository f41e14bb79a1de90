namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Dark current predicted for one temperature.</summary>
/// <param name="TemperatureCelsius">The temperature, °C.</param>
/// <param name="Rate">Rate of the typical pixel, e-/px/s; the uncertainty includes the spread between the plausible
/// laws.</param>
/// <param name="DoublingTemperature">Temperature rise that doubles the rate there, °C.</param>
/// <param name="Extrapolated">Whether the temperature lies outside the measured range: draw it dashed, and
/// warn.</param>
internal sealed record DarkCurrentPrediction(
    double TemperatureCelsius,
    Measurement Rate,
    Measurement DoublingTemperature,
    bool Extrapolated
);
