using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits;

/// <summary>One header and data unit. Images give their pixels row by row; other kinds are only listed.</summary>
/// <remarks>Safe for several threads. Usable until its <see cref="FitsFile"/> is disposed.</remarks>
public sealed partial class FitsHdu
{
    private readonly PixelScaling? scaling;
    private readonly PixelStore? store;

    internal FitsHdu(
        HduExtent extent,
        FitsHeader header,
        FitsHduKind kind,
        int bitpix,
        long[] axes,
        PixelScaling? scaling,
        PixelStore? store
    )
    {
        (Extent, Header, Kind, Bitpix, Axes, this.scaling, this.store) = (
            extent,
            header,
            kind,
            bitpix,
            axes,
            scaling,
            store
        );
        if (store is null)
            return;
        Width = (int)axes[0];
        Height = axes.Length > 1 ? (int)axes[1] : 1;
        Planes = 1;
        foreach (long length in axes.AsSpan(Math.Min(2, axes.Length)))
            Planes = checked((int)(Planes * length));
    }

    /// <summary>Index in the file, 0 for the primary HDU.</summary>
    public int Index => Extent.Location.Hdu!.Value;

    /// <summary>
    /// EXTNAME; null when there is none, or only the name that packers give to unnamed compressed images.
    /// </summary>
    public string? Name =>
        Header.Text("EXTNAME") is { } name && !(Kind == FitsHduKind.CompressedImage && name == "COMPRESSED_IMAGE")
            ? name
            : null;

    /// <summary>Kind of content.</summary>
    public FitsHduKind Kind { get; }

    /// <summary>The header as stored in the file.</summary>
    public FitsHeader Header { get; }

    /// <summary>BITPIX; for a compressed image that of the original (ZBITPIX).</summary>
    public int Bitpix { get; }

    /// <summary>NAXIS1, NAXIS2, …; for a compressed image those of the original.</summary>
    public IReadOnlyList<long> Axes { get; }

    /// <summary>BSCALE, 1 by default.</summary>
    public double BScale => scaling?.Scale ?? 1;

    /// <summary>BZERO, 0 by default.</summary>
    public double BZero => scaling?.Zero ?? 0;

    /// <summary>
    /// BLANK, the stored number that means "no value"; null when there is none and for floating-point images.
    /// </summary>
    public long? Blank => scaling?.Blank;

    /// <summary>Type of the physical values.</summary>
    public FitsPixelType PixelType => scaling?.PixelType ?? FitsPixelType.UInt8;

    /// <summary>Whether there are pixels to read.</summary>
    public bool HasPixels => store is not null;

    /// <summary>Pixels in a row (NAXIS1); 0 without pixels.</summary>
    public int Width { get; }

    /// <summary>Rows of a plane (NAXIS2, or 1); 0 without pixels.</summary>
    public int Height { get; }

    /// <summary>Number of planes: the product of NAXIS3, NAXIS4, …; 0 without pixels.</summary>
    public int Planes { get; }

    /// <summary>Position in the file.</summary>
    internal HduExtent Extent { get; }

    /// <summary>Index, kind, name and size.</summary>
    public override string ToString() =>
        $"HDU {Index}: "
        + $"{Kind}{(Name is null ? "" : " " + Name)}{(Axes.Count == 0 ? "" : " " + string.Join(" × ", Axes))}";
}
