namespace SensorProfile.Frames.Headers;

/// <summary>What kind of header an issue was found in: its sentence names what the user finds there.</summary>
internal enum HeaderSource
{
    /// <summary>Keywords of FITS.</summary>
    Fits,

    /// <summary>Tags of Exif, TIFF/EP and DNG.</summary>
    Raw,
}
