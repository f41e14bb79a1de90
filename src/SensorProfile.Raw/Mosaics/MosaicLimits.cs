namespace SensorProfile.Raw.Mosaics;

/// <summary>Limits that no camera reaches but that keep a hostile file from taking much memory or time.</summary>
internal static class MosaicLimits
{
    /// <summary>Most columns or rows.</summary>
    public const int MaxPixelsOfASide = 65_535;

    /// <summary>Most samples of a mosaic; the largest sensors of still cameras have 150 million.</summary>
    public const long MaxSamples = 400_000_000;

    /// <summary>Most strips or tiles.</summary>
    public const int MaxSegments = 65_536;

    /// <summary>Lowest width and height of a tile; TIFF 6.0 requires multiples of 16.</summary>
    public const int MinTileSide = 16;

    /// <summary>Most bytes that one byte of Deflate can expand to (258 bytes from two bits).</summary>
    public const int MaxDeflateGrowth = 1032;

    /// <summary>Most bytes that one byte of LZW can expand to: strings of up to 3838 bytes from 9 to 12 bits.</summary>
    public const int MaxLzwGrowth = 2560;
}
