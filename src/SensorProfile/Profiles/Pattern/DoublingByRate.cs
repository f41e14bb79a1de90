namespace SensorProfile.Profiles.Pattern;

/// <summary>Doubling temperature of the pixels in a class of dark rate.</summary>
/// <param name="RateFrom">Lower edge of the class, e-/px/s at the reference temperature.</param>
/// <param name="RateTo">Upper edge.</param>
/// <param name="Doubling">Median doubling temperature of the class, °C.</param>
/// <param name="Spread">Standard deviation over the pixels after the measurement noise is removed, °C.</param>
/// <param name="Pixels">Pixels of the class whose laws were used: of ordinary pixels, and of the fainter ones above
/// them where the sensor is large, only a share.</param>
public sealed record DoublingByRate(double RateFrom, double RateTo, Measurement Doubling, double Spread, long Pixels);
