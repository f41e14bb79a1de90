namespace SensorProfile.Fits.Tiles;

/// <summary>The tile compression methods of FITS 4.0 §10.4.</summary>
internal enum TileCompression
{
    /// <summary>RICE_1.</summary>
    Rice,

    /// <summary>GZIP_1.</summary>
    Gzip,

    /// <summary>GZIP_2: all first bytes of the numbers, then all second ones …</summary>
    ShuffledGzip,

    /// <summary>PLIO_1.</summary>
    Plio,

    /// <summary>HCOMPRESS_1.</summary>
    Hcompress,

    /// <summary>NOCOMPRESS: big-endian numbers.</summary>
    None,
}
