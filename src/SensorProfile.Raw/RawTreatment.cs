namespace SensorProfile.Raw;

/// <summary>Processing of the samples before they were stored.</summary>
public enum RawTreatmentKind
{
    /// <summary>
    /// The camera subtracted its own dark frame (long-exposure noise reduction): dark current and hot pixels are gone,
    /// and the noise is higher.
    /// </summary>
    DarkSubtracted,

    /// <summary>Noise was reduced: the remaining noise is not the sensor's.</summary>
    NoiseReduced,

    /// <summary>The samples were compressed with loss before they were stored in this file.</summary>
    LossyCompression,

    /// <summary>Stored codes follow a curve; see <see cref="RawMosaic.Linearisation"/>.</summary>
    CurvedCodes,

    /// <summary>Several exposures were combined into one (composite, or pixel shift).</summary>
    SeveralExposures,
}

/// <summary>One kind of processing, with the evidence in the file.</summary>
/// <param name="Kind">Kind of processing.</param>
/// <param name="Evidence">Tag and value, for example <c>Long Exposure Noise Reduction: On</c>.</param>
public sealed record RawTreatment(RawTreatmentKind Kind, string Evidence);
