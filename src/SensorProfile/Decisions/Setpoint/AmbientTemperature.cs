namespace SensorProfile.Decisions.Setpoint;

/// <summary>An ambient temperature at night.</summary>
/// <param name="Label">For example "July".</param>
/// <param name="Celsius">°C.</param>
public sealed record AmbientTemperature(string Label, double Celsius);
