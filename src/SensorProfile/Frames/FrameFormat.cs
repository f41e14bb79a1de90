namespace SensorProfile.Frames;

/// <summary>What kind of file holds a frame.</summary>
internal enum FrameFormat
{
    /// <summary>FITS.</summary>
    Fits,

    /// <summary>The mosaic of a DNG, TIFF/EP or TIFF file.</summary>
    Raw,

    /// <summary>A raw file of a maker's own format, read through the system's LibRaw.</summary>
    OtherRaw,
}
