namespace SensorProfile.Raw;

/// <summary>Where a temperature was taken, from the most to the least use.</summary>
public enum RawTemperaturePlace
{
    /// <summary>At the sensor, says the maker's note; whether on its die or beside it, no file says.</summary>
    Sensor,

    /// <summary>Somewhere in the camera's body.</summary>
    Body,

    /// <summary>
    /// The air (Exif 2.31 AmbientTemperature), which many cameras use for the temperature of their body.
    /// </summary>
    Ambient,
}

/// <summary>A temperature that a file states.</summary>
/// <param name="Celsius">The temperature, °C.</param>
/// <param name="StepCelsius">Smallest difference that the file can express as it was written, °C: 1 for whole
/// degrees.</param>
/// <param name="Place">Where it was taken.</param>
/// <param name="Source">Name of the tag.</param>
public sealed record RawTemperature(double Celsius, double StepCelsius, RawTemperaturePlace Place, string Source);
