namespace SensorProfile.Raw;

/// <summary>Where a temperature was measured, most useful first.</summary>
public enum RawTemperaturePlace
{
    /// <summary>At the sensor, according to the maker's note; no file tells whether on the die or beside it.</summary>
    Sensor,

    /// <summary>Somewhere in the camera body.</summary>
    Body,

    /// <summary>
    /// The air (Exif 2.31 AmbientTemperature), a tag in which many cameras write their body temperature.
    /// </summary>
    Ambient,
}

/// <summary>A temperature stated by a file.</summary>
/// <param name="Celsius">The temperature, °C.</param>
/// <param name="StepCelsius">Resolution of the temperature as written, °C: 1 for whole degrees.</param>
/// <param name="Place">Where it was measured.</param>
/// <param name="Source">Name of the tag.</param>
public sealed record RawTemperature(double Celsius, double StepCelsius, RawTemperaturePlace Place, string Source);
