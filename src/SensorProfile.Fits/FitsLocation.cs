using System.Globalization;

namespace SensorProfile.Fits;

/// <summary>A place in a FITS file, as precise as known.</summary>
/// <param name="File">Path of the file.</param>
/// <param name="Hdu">Index of the header and data unit, 0 for the primary; null for the file as a whole.</param>
/// <param name="Keyword">Keyword of the card; null for none.</param>
/// <param name="ByteOffset">Offset in the file (in the unpacked stream for a gzipped file, unless the gzip stream
/// itself is meant); null when unknown.</param>
public sealed record FitsLocation(string File, int? Hdu = null, string? Keyword = null, long? ByteOffset = null)
{
    /// <summary>For example <c>dark_0012.fits, HDU 0, keyword BZERO, byte 560</c>; without the folder.</summary>
    public override string ToString() => string.Join(", ", [Path.GetFileName(File), .. Parts()]);

    /// <summary>For example <c>HDU 0, keyword BZERO, byte 560</c>; empty for the file as a whole.</summary>
    internal string WithinFile => string.Join(", ", Parts());

    private IEnumerable<string> Parts()
    {
        if (Hdu is { } hdu)
            yield return string.Create(CultureInfo.InvariantCulture, $"HDU {hdu}");
        if (Keyword is not null)
            yield return "keyword " + Keyword;
        if (ByteOffset is { } offset)
            yield return string.Create(CultureInfo.InvariantCulture, $"byte {offset}");
    }
}
