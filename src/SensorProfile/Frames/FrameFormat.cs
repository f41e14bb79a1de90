namespace SensorProfile.Frames;

/// <summary>File format of a frame.</summary>
internal enum FrameFormat
{
    /// <summary>FITS.</summary>
    Fits,

    /// <summary>The mosaic of a DNG, TIFF/EP or TIFF file.</summary>
    Raw,

    /// <summary>A maker's own raw format, read through the system's LibRaw.</summary>
    OtherRaw,
}
