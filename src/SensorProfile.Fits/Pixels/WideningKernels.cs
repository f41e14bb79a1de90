using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SensorProfile.Fits.Pixels;

/// <summary>
/// Vector versions of the conversions that cameras need most: 16-bit integers and floats to a wider type that holds
/// every value.
/// </summary>
internal static class WideningKernels
{
    /// <summary>Converts a leading part of the pixels; the caller converts the rest one by one.</summary>
    /// <returns>Number of pixels converted, 0 for a pair of types without a vector version.</returns>
    public static int Convert<TFrom, TTo>(ReadOnlySpan<TFrom> from, Span<TTo> to)
        where TFrom : unmanaged
        where TTo : unmanaged
    {
        if (typeof(TFrom) == typeof(ushort))
            return FromUInt16(MemoryMarshal.Cast<TFrom, ushort>(from), to);
        if (typeof(TFrom) == typeof(short))
            return FromInt16(MemoryMarshal.Cast<TFrom, short>(from), to);
        if (typeof(TFrom) == typeof(float) && typeof(TTo) == typeof(double))
            return FromFloat(MemoryMarshal.Cast<TFrom, float>(from), MemoryMarshal.Cast<TTo, double>(to));
        return 0;
    }

    private static int FromUInt16<TTo>(ReadOnlySpan<ushort> from, Span<TTo> to)
        where TTo : unmanaged
    {
        if (typeof(TTo) != typeof(int) && typeof(TTo) != typeof(float) && typeof(TTo) != typeof(double))
            return 0;
        int i = 0;
        for (; i <= from.Length - Vector<ushort>.Count; i += Vector<ushort>.Count)
        {
            Vector.Widen(new Vector<ushort>(from[i..]), out Vector<uint> low, out Vector<uint> high);
            Store(Vector.AsVectorInt32(low), to[i..]);
            Store(Vector.AsVectorInt32(high), to[(i + Vector<int>.Count)..]);
        }

        return i;
    }

    private static int FromInt16<TTo>(ReadOnlySpan<short> from, Span<TTo> to)
        where TTo : unmanaged
    {
        if (typeof(TTo) != typeof(int) && typeof(TTo) != typeof(float) && typeof(TTo) != typeof(double))
            return 0;
        int i = 0;
        for (; i <= from.Length - Vector<short>.Count; i += Vector<short>.Count)
        {
            Vector.Widen(new Vector<short>(from[i..]), out Vector<int> low, out Vector<int> high);
            Store(low, to[i..]);
            Store(high, to[(i + Vector<int>.Count)..]);
        }

        return i;
    }

    private static int FromFloat(ReadOnlySpan<float> from, Span<double> to)
    {
        int i = 0;
        for (; i <= from.Length - Vector<float>.Count; i += Vector<float>.Count)
        {
            Vector.Widen(new Vector<float>(from[i..]), out Vector<double> low, out Vector<double> high);
            low.CopyTo(to[i..]);
            high.CopyTo(to[(i + Vector<double>.Count)..]);
        }

        return i;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store<TTo>(Vector<int> numbers, Span<TTo> to)
        where TTo : unmanaged
    {
        if (typeof(TTo) == typeof(int))
        {
            numbers.CopyTo(MemoryMarshal.Cast<TTo, int>(to));
        }
        else if (typeof(TTo) == typeof(float))
        {
            // a float holds 16 bits exactly
            Vector.ConvertToSingle(numbers).CopyTo(MemoryMarshal.Cast<TTo, float>(to));
        }
        else
        {
            Vector.Widen(numbers, out Vector<long> low, out Vector<long> high);
            Vector.ConvertToDouble(low).CopyTo(MemoryMarshal.Cast<TTo, double>(to));
            Vector.ConvertToDouble(high).CopyTo(MemoryMarshal.Cast<TTo, double>(to)[Vector<double>.Count..]);
        }
    }
}
