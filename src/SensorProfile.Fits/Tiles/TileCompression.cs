namespace SensorProfile.Fits.Tiles;

/// <summary>The ways to compress a tile that FITS 4.0 §10.4 knows.</summary>
internal enum TileCompression
{
    /// <summary>RICE_1.</summary>
    Rice,

    /// <summary>GZIP_1.</summary>
    Gzip,

    /// <summary>GZIP_2: all first bytes of the numbers, then all second ones, ….</summary>
    ShuffledGzip,

    /// <summary>PLIO_1.</summary>
    Plio,

    /// <summary>HCOMPRESS_1.</summary>
    Hcompress,

    /// <summary>NOCOMPRESS: big-endian numbers.</summary>
    None,
}
