namespace SensorProfile.Frames;

/// <summary>What a file is, by its first bytes and, where these leave it open, by its name.</summary>
internal enum FileContent
{
    /// <summary>FITS by its name, plain or compressed.</summary>
    Fits,

    /// <summary>FITS under another name: half a download, or a file set aside.</summary>
    RenamedFits,

    /// <summary>A map of true values beside simulated frames (FITS inside, by its name no frame).</summary>
    TrueMap,

    /// <summary>TIFF of either byte order: DNG, TIFF/EP, many makers' raw files, and pictures.</summary>
    Tiff,

    /// <summary>A raw file of a maker's own format.</summary>
    MakersRaw,

    /// <summary>A raw file of a sensor that sees three colours in every pixel.</summary>
    LayeredRaw,

    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>Another picture: PNG, GIF, WebP, HEIF.</summary>
    Picture,

    /// <summary>A film.</summary>
    Film,

    /// <summary>PDF.</summary>
    Pdf,

    /// <summary>ZIP, gzip and other packed files.</summary>
    Archive,

    /// <summary>Text of any kind: notes, tables, settings, page sources.</summary>
    Text,

    /// <summary>Nothing in it.</summary>
    Empty,

    /// <summary>None of these.</summary>
    Other,
}
