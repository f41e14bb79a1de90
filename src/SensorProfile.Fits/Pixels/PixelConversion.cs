using System.Numerics;
using System.Runtime.CompilerServices;

namespace SensorProfile.Fits.Pixels;

/// <summary>
/// Converts pixels between number types: exactly to integers, rounded to the nearest to floats.
/// </summary>
internal static class PixelConversion
{
    /// <summary>Converts pixel by pixel.</summary>
    /// <returns>−1, or the index of the first pixel that the target type cannot hold.</returns>
    public static int Convert<TFrom, TTo>(ReadOnlySpan<TFrom> from, Span<TTo> to)
        where TFrom : unmanaged, INumber<TFrom>
        where TTo : unmanaged, INumber<TTo>
    {
        int done = Vector.IsHardwareAccelerated ? WideningKernels.Convert(from, to) : 0;
        int misfit = ConvertScalar(from[done..], to[done..]);
        return misfit < 0 ? misfit : done + misfit;
    }

    internal static int ConvertScalar<TFrom, TTo>(ReadOnlySpan<TFrom> from, Span<TTo> to)
        where TFrom : unmanaged, INumber<TFrom>
        where TTo : unmanaged, INumber<TTo>
    {
        for (int i = 0; i < from.Length; i++)
        {
            bool fits =
                IsFloat<TTo>() ? ToFloat(from[i], out to[i])
                : IsFloat<TFrom>() ? FloatToInteger(double.CreateTruncating(from[i]), out to[i])
                : IntegerToInteger(from[i], out to[i]);
            if (!fits)
                return i;
        }

        return -1;
    }

    /// <summary>
    /// Applies physical = zero + scale × stored in double precision: product first, then sum, each rounded.
    /// </summary>
    /// <param name="stored">Stored numbers.</param>
    /// <param name="physical">Physical values; NaN where the stored number is <paramref name="blank"/>.</param>
    /// <param name="scaling">BSCALE and BZERO.</param>
    /// <param name="blank">BLANK; null when no number is blank.</param>
    public static void Scale<T>(ReadOnlySpan<T> stored, Span<double> physical, PixelScaling scaling, T? blank)
        where T : unmanaged, INumber<T>
    {
        (double scale, double zero) = (scaling.Scale, scaling.Zero);
        for (int i = 0; i < stored.Length; i++)
            physical[i] = zero + (scale * double.CreateTruncating(stored[i]));
        if (blank is not { } nothing)
            return;
        for (int i = 0; i < stored.Length; i++)
        {
            if (stored[i] == nothing)
                physical[i] = double.NaN;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsFloat<T>() => typeof(T) == typeof(float) || typeof(T) == typeof(double);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool ToFloat<TFrom, TTo>(TFrom number, out TTo result)
        where TFrom : unmanaged, INumber<TFrom>
        where TTo : unmanaged, INumber<TTo>
    {
        result = TTo.CreateTruncating(number);
        return typeof(TFrom) != typeof(double)
            || typeof(TTo) != typeof(float)
            || TFrom.IsFinite(number) == TTo.IsFinite(result);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool FloatToInteger<TTo>(double number, out TTo result)
        where TTo : unmanaged, INumber<TTo>
    {
        result = TTo.CreateSaturating(number);
        bool back = double.CreateTruncating(result) == number;
        // 2⁶³ saturates to 2⁶³ − 1, which as a double is 2⁶³ again: such a number does not fit
        return Unsafe.SizeOf<TTo>() < 8 ? back : back && TTo.CreateSaturating(double.MaxValue) != result;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IntegerToInteger<TFrom, TTo>(TFrom number, out TTo result)
        where TFrom : unmanaged, INumber<TFrom>
        where TTo : unmanaged, INumber<TTo>
    {
        result = TTo.CreateTruncating(number);
        return TFrom.CreateTruncating(result) == number && TFrom.IsNegative(number) == TTo.IsNegative(result);
    }
}
