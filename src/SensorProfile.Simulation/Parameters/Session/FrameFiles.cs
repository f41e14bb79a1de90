namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>File format that a camera writes.</summary>
public enum FrameFiles
{
    /// <summary>FITS, as written by astronomy cameras and their programs.</summary>
    Fits,

    /// <summary>DNG, as written by ordinary cameras, without frame kind, gain setting and set point.</summary>
    Dng,

    /// <summary>DNG with lossless JPEG, the usual compression: "compressed-dng".</summary>
    CompressedDng,
}
