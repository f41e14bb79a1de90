namespace SensorProfile.Raw;

/// <summary>What was done to the samples before they were stored.</summary>
public enum RawTreatmentKind
{
    /// <summary>
    /// The camera subtracted a dark of its own (long-exposure noise reduction): dark current and hot pixels are gone,
    /// noise is higher.
    /// </summary>
    DarkSubtracted,

    /// <summary>Noise was reduced: what is left is not the sensor's.</summary>
    NoiseReduced,

    /// <summary>The samples went through a compression with loss before they came into this file.</summary>
    LossyCompression,

    /// <summary>Stored codes follow a curve; see <see cref="RawMosaic.Linearisation"/>.</summary>
    CurvedCodes,

    /// <summary>Several exposures were combined into one (composite, or shifted by pixels).</summary>
    SeveralExposures,
}

/// <summary>One treatment, with the words of the file that say so.</summary>
/// <param name="Kind">What was done.</param>
/// <param name="Evidence">Tag and value, for example <c>Long Exposure Noise Reduction: On</c>.</param>
public sealed record RawTreatment(RawTreatmentKind Kind, string Evidence);
