namespace SensorProfile.Profiles.Response;

/// <summary>What ends the signal of a pixel.</summary>
public enum SaturationCause
{
    /// <summary>The codes of the converter end before the pixels are full.</summary>
    Adc,

    /// <summary>The pixels are full before the codes end.</summary>
    Pixel,
}
