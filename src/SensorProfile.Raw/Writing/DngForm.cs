namespace SensorProfile.Raw.Writing;

/// <summary>
/// How the samples of a DNG are laid down. The default is what every reader of DNG can read: one strip of 16-bit
/// numbers.
/// </summary>
public sealed record DngForm
{
    /// <summary>None, lossless JPEG or Deflate.</summary>
    internal RawCompression Compression { get; init; }

    /// <summary>Whether uncompressed samples of fewer than 16 bits are packed, the highest bit first.</summary>
    internal bool IsPacked { get; init; }

    /// <summary>Whether the high byte of a number comes first.</summary>
    internal bool IsBigEndian { get; init; }

    /// <summary>Side of square tiles, a multiple of 16, px; 0 for strips.</summary>
    internal int TileSide { get; init; }

    /// <summary>Rows of a strip; 0 for one strip.</summary>
    internal int RowsPerStrip { get; init; }

    /// <summary>
    /// Columns between a sample and the one it is stored as the difference to, with Deflate: 0 (none), 1, 2 or 4.
    /// </summary>
    internal int DifferenceDistance { get; init; }

    /// <summary>
    /// Components that take turns in a line of lossless JPEG, 1 to 4; the row or tile width is a multiple of it.
    /// </summary>
    internal int JpegComponents { get; init; } = 1;

    /// <summary>Rows that make one line of lossless JPEG, 1 or 2; strips and tiles have a multiple of it.</summary>
    internal int JpegRowsPerLine { get; init; } = 1;

    /// <summary>Prediction of lossless JPEG, 1 to 7.</summary>
    internal int JpegPredictor { get; init; } = 1;

    /// <summary>Lines of lossless JPEG after which prediction starts anew; 0 for never.</summary>
    internal int JpegRestartLines { get; init; }

    /// <summary>
    /// Whether a small preview comes first and the mosaic stands in a sub-directory, as most cameras have it.
    /// </summary>
    internal bool HasPreview { get; init; }
}
