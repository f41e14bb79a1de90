namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>The temperature law of one pixel.</summary>
/// <param name="Rate">Rate at the reference temperature, e-/px/s.</param>
/// <param name="Doubling">Doubling temperature at the reference temperature, °C.</param>
/// <param name="Uncertainty">Standard uncertainty of the doubling temperature, °C.</param>
/// <param name="Pixel">Index in the frame, row by row.</param>
internal readonly record struct MeasuredLaw(float Rate, float Doubling, float Uncertainty, int Pixel);
