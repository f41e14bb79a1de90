namespace SensorProfile.Raw;

/// <summary>What kind of file the mosaic stands in.</summary>
public enum RawContainer
{
    /// <summary>TIFF without a word about a sensor: one 16-bit sample per pixel.</summary>
    Tiff,

    /// <summary>TIFF/EP (ISO 12234-2), or a maker's raw file that follows it.</summary>
    TiffEp,

    /// <summary>DNG; its version stands in <see cref="RawStorage.DngVersion"/>.</summary>
    Dng,
}

/// <summary>How the samples are compressed; all of these give back every sample as it was.</summary>
public enum RawCompression
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Lossless JPEG (ITU-T T.81, process 14: SOF3 with Huffman codes).</summary>
    LosslessJpeg,

    /// <summary>Deflate (zlib).</summary>
    Deflate,

    /// <summary>LZW as TIFF 6.0 has it.</summary>
    Lzw,
}

/// <summary>How the samples stand in the file.</summary>
/// <param name="Container">Kind of file.</param>
/// <param name="DngVersion">Version of the DNG specification, for example 1.4.0.0; null when the file is no
/// DNG.</param>
/// <param name="Compression">How the samples are compressed.</param>
/// <param name="BitsPerSample">Bits of a stored sample, 8 to 16.</param>
/// <param name="IsBigEndian">Whether the high byte of a number comes first.</param>
/// <param name="IsTiled">Whether the mosaic is cut into tiles rather than strips.</param>
/// <param name="SegmentWidth">Width of a strip or tile, px.</param>
/// <param name="SegmentHeight">Height of a strip or tile, px; the last one may be lower.</param>
/// <param name="Directory">Index of the directory of the mosaic, in the order in which the file names them.</param>
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
    /// <summary>Exposures that the file holds; the first is read.</summary>
    public int Exposures { get; init; } = 1;
}
