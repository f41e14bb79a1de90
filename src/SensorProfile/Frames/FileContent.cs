namespace SensorProfile.Frames;

/// <summary>What a file is, from its first bytes and, where these are ambiguous, from its name.</summary>
internal enum FileContent
{
    /// <summary>FITS with a FITS name, plain or compressed.</summary>
    Fits,

    /// <summary>FITS under another name: an unfinished download, or a file set aside.</summary>
    RenamedFits,

    /// <summary>
    /// A map of true values that comes with simulated frames (FITS inside, but named as no frame is).
    /// </summary>
    TrueMap,

    /// <summary>TIFF of either byte order: DNG, TIFF/EP, many makers' raw files, and ordinary images.</summary>
    Tiff,

    /// <summary>A raw file in a maker's own format.</summary>
    MakersRaw,

    /// <summary>A raw file from a sensor that records three colours in every pixel.</summary>
    LayeredRaw,

    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>Another image format: PNG, GIF, WebP, HEIF.</summary>
    Picture,

    /// <summary>A video.</summary>
    Film,

    /// <summary>PDF.</summary>
    Pdf,

    /// <summary>ZIP, gzip and other archives.</summary>
    Archive,

    /// <summary>Text of any kind: notes, tables, settings, web pages.</summary>
    Text,

    /// <summary>An empty file.</summary>
    Empty,

    /// <summary>Anything else.</summary>
    Other,
}
