namespace SensorProfile.Raw.Writing;

/// <summary>
/// How the samples of a DNG are stored. The default can be read by every DNG reader: one strip of 16-bit numbers.
/// </summary>
public sealed record DngForm
{
    /// <summary>None, lossless JPEG or Deflate.</summary>
    internal RawCompression Compression { get; init; }

    /// <summary>Whether uncompressed samples of fewer than 16 bits are packed, highest bit first.</summary>
    internal bool IsPacked { get; init; }

    /// <summary>Whether numbers are stored high byte first.</summary>
    internal bool IsBigEndian { get; init; }

    /// <summary>Side of square tiles, a multiple of 16, px; 0 for strips.</summary>
    internal int TileSide { get; init; }

    /// <summary>Rows per strip; 0 for one strip.</summary>
    internal int RowsPerStrip { get; init; }

    /// <summary>
    /// With Deflate: columns between a sample and the one it is stored as a difference from: 0 (none), 1, 2 or 4.
    /// </summary>
    internal int DifferenceDistance { get; init; }

    /// <summary>
    /// Components interleaved in a line of lossless JPEG, 1 to 4; the row or tile width is a multiple of it.
    /// </summary>
    internal int JpegComponents { get; init; } = 1;

    /// <summary>Rows per line of lossless JPEG, 1 or 2; strips and tiles have a multiple of it.</summary>
    internal int JpegRowsPerLine { get; init; } = 1;

    /// <summary>Predictor of lossless JPEG, 1 to 7.</summary>
    internal int JpegPredictor { get; init; } = 1;

    /// <summary>Lines of lossless JPEG after which prediction restarts; 0 for never.</summary>
    internal int JpegRestartLines { get; init; }

    /// <summary>
    /// Whether a small preview comes first and the mosaic is in a sub-directory, as in most camera files.
    /// </summary>
    internal bool HasPreview { get; init; }
}
