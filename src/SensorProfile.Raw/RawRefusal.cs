namespace SensorProfile.Raw;

/// <summary>Why a file is refused.</summary>
public enum RawRefusal
{
    /// <summary>It is neither TIFF nor DNG.</summary>
    AnotherFormat,

    /// <summary>It contradicts its format or ends too early.</summary>
    Damaged,

    /// <summary>It is well formed, but holds no image of individual sensor samples.</summary>
    NoMosaic,

    /// <summary>Its colours were interpolated from neighbouring pixels.</summary>
    Demosaiced,

    /// <summary>
    /// It was compressed with loss, or keeps fewer bits than the sensor's: its noise is not the sensor's.
    /// </summary>
    Lossy,

    /// <summary>It is raw, but its coding or layout is not supported by this reader.</summary>
    UnknownCoding,

    /// <summary>It exceeds this reader's limits, which no camera reaches.</summary>
    TooLarge,
}
