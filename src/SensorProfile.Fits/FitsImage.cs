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

    /// <summary>Cards to write behind the mandatory ones, in this order. Those that describe the layout (SIMPLE,
    /// BITPIX, NAXIS…, BSCALE, BZERO, DATASUM, CHECKSUM …) are
    /// written from the image itself and left out of this list, so that the header of a frame that was read can be
    /// handed on as it is.</summary>
    public IReadOnlyList<FitsCard> Cards { get; }

    /// <summary>EXTNAME; null for none, or when it stands among the cards.</summary>
    public string? Name { get; }

    /// <summary>BITPIX.</summary>
    internal abstract int Bitpix { get; }

    /// <summary>BZERO as it is written; null for none.</summary>
    internal abstract string? Zero { get; }

    /// <summary>The pixels in the byte order of this machine.</summary>
    internal abstract ReadOnlySpan<byte> Bytes { get; }
}
