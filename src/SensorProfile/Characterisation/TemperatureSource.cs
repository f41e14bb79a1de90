namespace SensorProfile.Characterisation;

/// <summary>Where the temperatures of the darks come from.</summary>
public enum TemperatureSource
{
    /// <summary>From the headers (or the capture table); the hot pixels only check them.</summary>
    Headers,

    /// <summary>
    /// From the brightness of the hot pixels, anchored at the headers of the sets taken at one temperature.
    /// </summary>
    HotPixels,
}
