using System.Globalization;
using System.Runtime.InteropServices;

namespace SensorProfile.Fits;

/// <summary>
/// An image to be written, with pixels of one type: byte, sbyte, short, ushort, int, uint, long, ulong, float or
/// double.
/// </summary>
/// <remarks>
/// Unsigned 16, 32 and 64-bit and signed 8-bit pixels are written, exactly, with the BZERO that the standard reserves
/// for them.
/// </remarks>
/// <typeparam name="T">Type of the pixels.</typeparam>
public sealed class FitsImage<T> : FitsImage
    where T : unmanaged
{
    private readonly ReadOnlyMemory<T> pixels;

    /// <summary>An image of two axes.</summary>
    /// <param name="width">Pixels in a row (NAXIS1).</param>
    /// <param name="height">Rows (NAXIS2); the first row comes first in the file.</param>
    /// <param name="pixels">The pixels, row by row.</param>
    /// <param name="cards">Further header cards.</param>
    /// <param name="name">EXTNAME.</param>
    /// <exception cref="ArgumentException">The number of pixels does not match the axes.</exception>
    public FitsImage(
        int width,
        int height,
        ReadOnlyMemory<T> pixels,
        IReadOnlyList<FitsCard>? cards = null,
        string? name = null
    )
        : this([width, height], pixels, cards, name) { }

    /// <summary>An image of any number of axes up to 999.</summary>
    /// <param name="axes">NAXIS1, NAXIS2, …; none for an HDU without data.</param>
    /// <param name="pixels">The pixels, first axis fastest.</param>
    /// <param name="cards">Further header cards.</param>
    /// <param name="name">EXTNAME.</param>
    /// <exception cref="ArgumentException">The number of pixels does not match the axes.</exception>
    /// <exception cref="NotSupportedException">FITS has no such pixel type.</exception>
    public FitsImage(
        IReadOnlyList<long> axes,
        ReadOnlyMemory<T> pixels,
        IReadOnlyList<FitsCard>? cards = null,
        string? name = null
    )
        : base(axes, cards, name)
    {
        this.pixels = pixels;
        (Bitpix, Zero) = LayoutOfT();
        Int128 product = axes.Count == 0 ? 0 : 1;
        foreach (long axis in axes)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(axis, nameof(axes));
            product = Int128.Min(product * axis, long.MaxValue);
        }

        ArgumentOutOfRangeException.ThrowIfGreaterThan(axes.Count, 999, nameof(axes));
        if (product != pixels.Length)
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{pixels.Length} pixels do not fill axes of {string.Join(" × ", axes)}."
                ),
                nameof(pixels)
            );
    }

    /// <inheritdoc/>
    internal override int Bitpix { get; }

    /// <inheritdoc/>
    internal override string? Zero { get; }

    /// <inheritdoc/>
    internal override ReadOnlySpan<byte> Bytes => MemoryMarshal.AsBytes(pixels.Span);

    private static (int Bitpix, string? Zero) LayoutOfT() =>
        Type.GetTypeCode(typeof(T)) switch
        {
            TypeCode.Byte => (8, null),
            TypeCode.SByte => (8, "-128"),
            TypeCode.Int16 => (16, null),
            TypeCode.UInt16 => (16, "32768"),
            TypeCode.Int32 => (32, null),
            TypeCode.UInt32 => (32, "2147483648"),
            TypeCode.Int64 => (64, null),
            TypeCode.UInt64 => (64, "9223372036854775808"),
            TypeCode.Single => (-32, null),
            TypeCode.Double => (-64, null),
            _ => throw new NotSupportedException($"FITS has no pixels of type {typeof(T).Name}."),
        };
}
