namespace SensorProfile.Raw;

/// <summary>Why a file is refused.</summary>
public enum RawRefusal
{
    /// <summary>It is neither TIFF nor DNG.</summary>
    AnotherFormat,

    /// <summary>It contradicts its format or ends too early.</summary>
    Damaged,

    /// <summary>It is well formed, but holds no image of single sensor samples.</summary>
    NoMosaic,

    /// <summary>The colours of its pixels were computed from their neighbours.</summary>
    Demosaiced,

    /// <summary>
    /// It was compressed with loss, or keeps fewer than the sensor's bits: its noise is not the sensor's.
    /// </summary>
    Lossy,

    /// <summary>It is raw, in a coding or layout that this reader does not know.</summary>
    UnknownCoding,

    /// <summary>It is larger than this reader's limits, which no camera reaches.</summary>
    TooLarge,
}
