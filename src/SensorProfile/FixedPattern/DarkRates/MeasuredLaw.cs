namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>The temperature law of one pixel.</summary>
/// <param name="Rate">Rate at the reference temperature, e-/px/s.</param>
/// <param name="Doubling">Doubling temperature there, °C.</param>
/// <param name="Uncertainty">Its standard uncertainty, °C.</param>
/// <param name="Pixel">Place in the frame, row after row.</param>
internal readonly record struct MeasuredLaw(float Rate, float Doubling, float Uncertainty, int Pixel);
