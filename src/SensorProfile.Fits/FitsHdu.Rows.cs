using System.Buffers;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits;

public sealed partial class FitsHdu
{
    private const int ConversionPixels = 1 << 15;

    /// <summary>
    /// Reads whole rows as unsigned 16-bit integers. The fast way for camera frames: the bytes go straight into the
    /// span.
    /// </summary>
    /// <param name="firstRow">First row, 0 for the first one in the file.</param>
    /// <param name="pixels">Buffer for a whole number of rows.</param>
    /// <param name="plane">Plane of an image with more than two axes.</param>
    /// <exception cref="FitsFormatException">A pixel is blank, not an integer, or outside 0…65535; or the file has been
    /// damaged since it was opened.</exception>
    /// <exception cref="ArgumentException">The span does not hold a whole number of rows, or the rows lie outside the
    /// image.</exception>
    /// <exception cref="InvalidOperationException">The HDU holds no image.</exception>
    public void ReadRows(int firstRow, Span<ushort> pixels, int plane = 0)
    {
        long first = FirstPixel(firstRow, pixels.Length, plane);
        if (PixelType is not (FitsPixelType.UInt16 or FitsPixelType.Int16))
        {
            ReadExactly(first, pixels);
            return;
        }

        store!.Read(first, MemoryMarshal.AsBytes(pixels), scaling!.FlipsTopBit);
        if (
            PixelType == FitsPixelType.Int16
            && pixels.IndexOfAnyInRange((ushort)0x8000, (ushort)0xFFFF) is >= 0 and var negative
        )
            throw Misfit(
                first + negative,
                ((short)pixels[negative]).ToString(CultureInfo.InvariantCulture),
                "unsigned 16-bit integers"
            );
        if (
            Blank is { } blank
            && blank + (long)BZero is >= 0 and <= ushort.MaxValue and var nothing
            && pixels.IndexOf((ushort)nothing) is >= 0 and var found
        )
            throw BlankPixel(first + found);
    }

    /// <summary>Reads whole rows as 32-bit integers.</summary>
    /// <inheritdoc cref="ReadRows(int, Span{ushort}, int)" path="/param"/>
    /// <exception cref="FitsFormatException">A pixel is blank, not an integer, or does not fit; or the file has been
    /// damaged since it was opened.</exception>
    /// <exception cref="ArgumentException">The span does not hold a whole number of rows, or the rows lie outside the
    /// image.</exception>
    public void ReadRows(int firstRow, Span<int> pixels, int plane = 0) =>
        ReadExactly(FirstPixel(firstRow, pixels.Length, plane), pixels);

    /// <summary>Reads whole rows as 64-bit integers.</summary>
    /// <inheritdoc cref="ReadRows(int, Span{int}, int)"/>
    public void ReadRows(int firstRow, Span<long> pixels, int plane = 0) =>
        ReadExactly(FirstPixel(firstRow, pixels.Length, plane), pixels);

    /// <summary>Reads whole rows as unsigned 64-bit integers.</summary>
    /// <inheritdoc cref="ReadRows(int, Span{int}, int)"/>
    public void ReadRows(int firstRow, Span<ulong> pixels, int plane = 0) =>
        ReadExactly(FirstPixel(firstRow, pixels.Length, plane), pixels);

    /// <summary>
    /// Reads whole rows as 32-bit floats: blank pixels become NaN; values that a float cannot hold exactly are rounded
    /// to the nearest.
    /// </summary>
    /// <inheritdoc cref="ReadRows(int, Span{ushort}, int)" path="/param"/>
    /// <exception cref="FitsFormatException">A value is beyond the range of a 32-bit float; or the file has been
    /// damaged since it was opened.</exception>
    /// <exception cref="ArgumentException">The span does not hold a whole number of rows, or the rows lie outside the
    /// image.</exception>
    public void ReadRows(int firstRow, Span<float> pixels, int plane = 0) =>
        ReadExactly(FirstPixel(firstRow, pixels.Length, plane), pixels);

    /// <summary>
    /// Reads whole rows as 64-bit floats: blank pixels become NaN; 64-bit integers beyond 2⁵³ are rounded to the
    /// nearest.
    /// </summary>
    /// <inheritdoc cref="ReadRows(int, Span{float}, int)"/>
    public void ReadRows(int firstRow, Span<double> pixels, int plane = 0) =>
        ReadExactly(FirstPixel(firstRow, pixels.Length, plane), pixels);

    private long FirstPixel(int firstRow, int pixels, int plane)
    {
        if (store is null)
            throw new InvalidOperationException($"{Extent.Location}: this HDU holds no image ({Kind}).");
        if (pixels % Width != 0)
            throw new ArgumentException(
                $"Room for {pixels} pixels is not a whole number of rows of {Width}.",
                nameof(pixels)
            );
        ArgumentOutOfRangeException.ThrowIfNegative(firstRow);
        ArgumentOutOfRangeException.ThrowIfGreaterThan((long)firstRow + (pixels / Width), Height, nameof(firstRow));
        ArgumentOutOfRangeException.ThrowIfNegative(plane);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(plane, Planes);
        return (((long)plane * Height) + firstRow) * Width;
    }

    /// <summary>Dispatches on the stored type; from here on pixels are processed in steps that fit the cache.</summary>
    private void ReadExactly<T>(long first, Span<T> pixels)
        where T : unmanaged, INumber<T>
    {
        switch (PixelType)
        {
            case FitsPixelType.UInt8:
                ReadAs<byte, T>(first, pixels);
                break;
            case FitsPixelType.Int8:
                ReadAs<sbyte, T>(first, pixels);
                break;
            case FitsPixelType.Int16:
                ReadAs<short, T>(first, pixels);
                break;
            case FitsPixelType.UInt16:
                ReadAs<ushort, T>(first, pixels);
                break;
            case FitsPixelType.Int32:
                ReadAs<int, T>(first, pixels);
                break;
            case FitsPixelType.UInt32:
                ReadAs<uint, T>(first, pixels);
                break;
            case FitsPixelType.Int64:
                ReadAs<long, T>(first, pixels);
                break;
            case FitsPixelType.UInt64:
                ReadAs<ulong, T>(first, pixels);
                break;
            case FitsPixelType.Float32:
                ReadAs<float, T>(first, pixels);
                break;
            case FitsPixelType.Float64 when !scaling!.NeedsArithmetic:
                ReadAs<double, T>(first, pixels);
                break;
            default:
                ReadScaled(first, pixels);
                break;
        }
    }

    private void ReadAs<TPhysical, T>(long first, Span<T> pixels)
        where TPhysical : unmanaged, INumber<TPhysical>
        where T : unmanaged, INumber<T>
    {
        TPhysical? blank = BlankAs<TPhysical>(BZero);
        InSteps<TPhysical, T>(first, pixels, (at, physical, target) =>
        {
            Store(at, (ReadOnlySpan<TPhysical>)physical, target);
            if (blank is { } nothing)
                MarkBlanks(at, physical, target, nothing);
        });
    }

    private void ReadScaled<T>(long first, Span<T> pixels)
        where T : unmanaged, INumber<T>
    {
        switch (Bitpix)
        {
            case 8:
                ReadScaled<byte, T>(first, pixels);
                break;
            case 16:
                ReadScaled<short, T>(first, pixels);
                break;
            case 32:
                ReadScaled<int, T>(first, pixels);
                break;
            case 64:
                ReadScaled<long, T>(first, pixels);
                break;
            case -32:
                ReadScaled<float, T>(first, pixels);
                break;
            default:
                ReadScaled<double, T>(first, pixels);
                break;
        }
    }

    private void ReadScaled<TStored, T>(long first, Span<T> pixels)
        where TStored : unmanaged, INumber<TStored>
        where T : unmanaged, INumber<T>
    {
        TStored? blank = BlankAs<TStored>(0);
        InSteps<TStored, T>(first, pixels, (at, stored, target) =>
        {
            double[] physical = ArrayPool<double>.Shared.Rent(stored.Length);
            PixelConversion.Scale(stored, physical, scaling!, blank);
            Store(at, physical.AsSpan(0, stored.Length), target);
            ArrayPool<double>.Shared.Return(physical);
        });
    }

    private delegate void Step<TStored, T>(long firstPixel, Span<TStored> stored, Span<T> target);

    private void InSteps<TStored, T>(long first, Span<T> pixels, Step<TStored, T> step)
        where TStored : unmanaged
        where T : unmanaged
    {
        TStored[] buffer = ArrayPool<TStored>.Shared.Rent(Math.Min(ConversionPixels, pixels.Length));
        for (int done = 0; done < pixels.Length; )
        {
            int count = Math.Min(ConversionPixels, pixels.Length - done);
            Span<TStored> stored = buffer.AsSpan(0, count);
            store!.Read(first + done, MemoryMarshal.AsBytes(stored), scaling!.FlipsTopBit);
            step(first + done, stored, pixels.Slice(done, count));
            done += count;
        }

        ArrayPool<TStored>.Shared.Return(buffer);
    }

    private void Store<TFrom, T>(long first, ReadOnlySpan<TFrom> from, Span<T> target)
        where TFrom : unmanaged, INumber<TFrom>
        where T : unmanaged, INumber<T>
    {
        if (PixelConversion.Convert(from, target) is not (>= 0 and var index))
            return;
        if (TFrom.IsNaN(from[index]) && Blank is not null)
            throw BlankPixel(first + index);
        throw Misfit(first + index, from[index].ToString(null, CultureInfo.InvariantCulture), NameOf<T>());
    }

    private void MarkBlanks<TPhysical, T>(long first, Span<TPhysical> physical, Span<T> target, TPhysical blank)
        where TPhysical : unmanaged, INumber<TPhysical>
        where T : unmanaged, INumber<T>
    {
        for (int at = physical.IndexOf(blank); at >= 0; )
        {
            if (typeof(T) != typeof(float) && typeof(T) != typeof(double))
                throw BlankPixel(first + at);
            target[at] = T.CreateTruncating(double.NaN);
            int next = physical[(at + 1)..].IndexOf(blank);
            at = next < 0 ? -1 : at + 1 + next;
        }
    }

    /// <summary>BLANK plus an offset in the given type; null when no pixel of that type can have the value.</summary>
    private T? BlankAs<T>(double offset)
        where T : unmanaged, INumber<T>
    {
        if (Blank is not { } blank || Bitpix < 0)
            return null;
        Int128 value = blank + (Int128)offset;
        T number = T.CreateTruncating(value);
        return Int128.CreateTruncating(number) == value ? number : null;
    }

    private static string NameOf<T>() =>
        typeof(T) == typeof(ushort) ? "unsigned 16-bit integers"
        : typeof(T) == typeof(int) ? "32-bit integers"
        : typeof(T) == typeof(long) ? "64-bit integers"
        : typeof(T) == typeof(ulong) ? "unsigned 64-bit integers"
        : "32-bit floats";

    private FitsFormatException BlankPixel(long pixel) =>
        new(
            Extent.Location,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{PlaceOf(pixel)} is blank (BLANK = {Blank}), which an integer cannot represent."
            ),
            "Read the image as floating-point numbers, or leave the file out."
        );

    private FitsFormatException Misfit(long pixel, string value, string wanted) =>
        new(
            Extent.Location,
            $"{PlaceOf(pixel)} is {value}, which {wanted} cannot hold.",
            "Read the image as floating-point numbers, or leave the file out."
        );

    /// <summary>Column and row, counted from 1 as FITS does.</summary>
    private string PlaceOf(long pixel) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the pixel in column {(pixel % Width) + 1}, row {(pixel / Width % Height) + 1}"
        );
}
