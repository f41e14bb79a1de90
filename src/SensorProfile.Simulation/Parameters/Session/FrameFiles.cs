namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>The kind of file that a camera writes.</summary>
public enum FrameFiles
{
    /// <summary>FITS, as cameras made for astronomy and their programs do.</summary>
    Fits,

    /// <summary>DNG, as ordinary cameras do: no kind of frame, no gain setting and no set point is in it.</summary>
    Dng,

    /// <summary>DNG with lossless JPEG inside, as most cameras compress: "compressed-dng".</summary>
    CompressedDng,
}
