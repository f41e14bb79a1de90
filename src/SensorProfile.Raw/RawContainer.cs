namespace SensorProfile.Raw;

/// <summary>Kind of file that holds the mosaic.</summary>
public enum RawContainer
{
    /// <summary>TIFF without any sensor information: one 16-bit sample per pixel.</summary>
    Tiff,

    /// <summary>TIFF/EP (ISO 12234-2), or a maker's raw file that follows it.</summary>
    TiffEp,

    /// <summary>DNG; its version is in <see cref="RawStorage.DngVersion"/>.</summary>
    Dng,
}

/// <summary>Compression of the samples; all of these are lossless.</summary>
public enum RawCompression
{
    /// <summary>None.</summary>
    None,

    /// <summary>Lossless JPEG (ITU-T T.81, process 14: SOF3 with Huffman codes).</summary>
    LosslessJpeg,

    /// <summary>Deflate (zlib).</summary>
    Deflate,

    /// <summary>LZW as in TIFF 6.0.</summary>
    Lzw,
}

/// <summary>How the samples are stored in the file.</summary>
/// <param name="Container">Kind of file.</param>
/// <param name="DngVersion">Version of the DNG specification, for example 1.4.0.0; null when the file is not a
/// DNG.</param>
/// <param name="Compression">Compression of the samples.</param>
/// <param name="BitsPerSample">Bits per stored sample, 8 to 16.</param>
/// <param name="IsBigEndian">Whether numbers are stored high byte first.</param>
/// <param name="IsTiled">Whether the mosaic is divided into tiles instead of strips.</param>
/// <param name="SegmentWidth">Width of a strip or tile, px.</param>
/// <param name="SegmentHeight">Height of a strip or tile, px; the last one may be shorter.</param>
/// <param name="Directory">Index of the mosaic's directory, in file order.</param>
public sealed record RawStorage(
    RawContainer Container,
    Version? DngVersion,
    RawCompression Compression,
    int BitsPerSample,
    bool IsBigEndian,
    bool IsTiled,
    int SegmentWidth,
    int SegmentHeight,
    int Directory
)
{
    /// <summary>Number of exposures in the file; the first one is read.</summary>
    public int Exposures { get; init; } = 1;
}
