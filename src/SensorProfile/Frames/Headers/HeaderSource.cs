namespace SensorProfile.Frames.Headers;

/// <summary>
/// The format of the header an issue was found in, so that its sentence uses the names the user finds there.
/// </summary>
internal enum HeaderSource
{
    /// <summary>FITS keywords.</summary>
    Fits,

    /// <summary>Exif, TIFF/EP and DNG tags.</summary>
    Raw,
}
