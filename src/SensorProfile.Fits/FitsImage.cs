namespace SensorProfile.Fits;

/// <summary>An image to be written: axes, cards and pixels. See <see cref="FitsImage{T}"/>.</summary>
public abstract class FitsImage
{
    private protected FitsImage(IReadOnlyList<long> axes, IReadOnlyList<FitsCard>? cards, string? name)
    {
        ArgumentNullException.ThrowIfNull(axes);
        (Axes, Cards, Name) = (axes, cards ?? [], name);
    }

    /// <summary>NAXIS1, NAXIS2, …; empty for an HDU without data.</summary>
    public IReadOnlyList<long> Axes { get; }

    /// <summary>
    /// Cards to write after the mandatory ones, in this order. Cards that describe the layout (SIMPLE, BITPIX, NAXIS…,
    /// BSCALE, BZERO, DATASUM, CHECKSUM …) are derived from the image itself and skipped here, so that the header of a
    /// frame can be passed on unchanged.
    /// </summary>
    public IReadOnlyList<FitsCard> Cards { get; }

    /// <summary>EXTNAME; null for none, or when the cards contain it.</summary>
    public string? Name { get; }

    /// <summary>BITPIX.</summary>
    internal abstract int Bitpix { get; }

    /// <summary>BZERO to write; null for none.</summary>
    internal abstract string? Zero { get; }

    /// <summary>The pixels in machine byte order.</summary>
    internal abstract ReadOnlySpan<byte> Bytes { get; }
}
