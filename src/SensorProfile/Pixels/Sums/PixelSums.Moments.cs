using System.Numerics;

namespace SensorProfile.Pixels.Sums;

internal static partial class PixelSums
{
    /// <summary>
    /// Mean x₁ + Σd/N and variance (N·Σd² − (Σd)²)/(N(N−1)) of every pixel; the differences are formed in exact
    /// integers.
    /// </summary>
    /// <param name="first">x₁, ADU.</param>
    /// <param name="sums">Σd, ADU.</param>
    /// <param name="squares">Σd², ADU².</param>
    /// <param name="frames">N, 1 … 32768. The variance of one frame is not a number.</param>
    /// <param name="mean">ADU.</param> <param name="variance">ADU²; empty when not needed.</param>
    public static void Moments(
        ReadOnlySpan<ushort> first,
        ReadOnlySpan<int> sums,
        ReadOnlySpan<long> squares,
        int frames,
        Span<float> mean,
        Span<float> variance
    )
    {
        if (
            sums.Length != first.Length
            || squares.Length != first.Length
            || mean.Length != first.Length
            || (variance.Length != first.Length && !variance.IsEmpty)
        )
            throw new ArgumentException(
                $"{first.Length} pixels, {sums.Length} and {squares.Length} sums, {mean.Length} means and "
                    + $"{variance.Length} variances do not match.",
                nameof(mean)
            );
        int done = Vector.IsHardwareAccelerated ? MeansVector(first, sums, frames, mean) : 0;
        MeansScalar(first, sums, frames, mean, done);
        if (!variance.IsEmpty)
            Variances(sums, squares, frames, variance);
    }

    internal static void MeansScalar(
        ReadOnlySpan<ushort> first,
        ReadOnlySpan<int> sums,
        int frames,
        Span<float> mean,
        int start
    )
    {
        for (int i = start; i < first.Length; i++)
            mean[i] = (float)(first[i] + (double)sums[i] / frames);
    }

    /// <summary>The same steps in the same order, so the same bits; returns the number of pixels done.</summary>
    private static int MeansVector(ReadOnlySpan<ushort> first, ReadOnlySpan<int> sums, int frames, Span<float> mean)
    {
        var n = new Vector<double>(frames);
        int step = Vector<int>.Count,
            i = 0;
        for (; i <= first.Length - Vector<ushort>.Count; i += Vector<ushort>.Count)
        {
            Vector.Widen(new Vector<ushort>(first[i..]), out var low, out var high);
            OneVector(low, sums[i..], mean[i..]);
            OneVector(high, sums[(i + step)..], mean[(i + step)..]);
        }
        return i;

        void OneVector(Vector<uint> origin, ReadOnlySpan<int> sum, Span<float> result)
        {
            Vector.Widen(origin.As<uint, int>(), out var originLow, out var originHigh);
            Vector.Widen(new Vector<int>(sum), out var low, out var high);
            Vector
                .Narrow(
                    Vector.ConvertToDouble(originLow) + Vector.ConvertToDouble(low) / n,
                    Vector.ConvertToDouble(originHigh) + Vector.ConvertToDouble(high) / n
                )
                .CopyTo(result);
        }
    }

    private static void Variances(ReadOnlySpan<int> sums, ReadOnlySpan<long> squares, int frames, Span<float> variance)
    {
        int done = Vector.IsHardwareAccelerated ? VariancesVector(sums, squares, frames, variance) : 0;
        VariancesScalar(sums, squares, frames, variance, done, sums.Length);
    }

    /// <summary>The definition: N·Σd² ≤ 2¹⁵·2¹⁵·2³² and (Σd)² ≤ 2⁶² fit in 64 bits.</summary>
    internal static void VariancesScalar(
        ReadOnlySpan<int> sums,
        ReadOnlySpan<long> squares,
        int frames,
        Span<float> variance,
        int start,
        int end
    )
    {
        double divisor = (double)frames * (frames - 1);
        for (int i = start; i < end; i++)
            variance[i] = (float)((frames * squares[i] - (long)sums[i] * sums[i]) / divisor);
    }

    /// <summary>Two vectors of doubles for each vector of floats; returns the number of pixels done.</summary>
    /// <remarks>
    /// While N·Σd² &lt; 2⁵³ every product and difference is a whole number that a double holds exactly, (Σd)² ≤ N·Σd²
    /// included; beyond that, the definition is used.
    /// </remarks>
    private static int VariancesVector(
        ReadOnlySpan<int> sums,
        ReadOnlySpan<long> squares,
        int frames,
        Span<float> variance
    )
    {
        var n = new Vector<double>(frames);
        var divisor = new Vector<double>((double)frames * (frames - 1));
        var limit = new Vector<long>((1L << 53) / frames - 1);
        int half = Vector<double>.Count,
            i = 0;
        for (; i <= sums.Length - Vector<int>.Count; i += Vector<int>.Count)
        {
            Vector<long> squareLow = new(squares[i..]),
                squareHigh = new(squares[(i + half)..]);
            if (Vector.GreaterThanAny(Vector.Max(squareLow, squareHigh), limit))
            {
                VariancesScalar(sums, squares, frames, variance, i, i + Vector<int>.Count);
                continue;
            }
            Vector.Widen(new Vector<int>(sums[i..]), out var low, out var high);
            Vector.Narrow(Of(low, squareLow), Of(high, squareHigh)).CopyTo(variance[i..]);
        }
        return i;

        Vector<double> Of(Vector<long> sum, Vector<long> square)
        {
            var s = Vector.ConvertToDouble(sum);
            return (n * Vector.ConvertToDouble(square) - s * s) / divisor;
        }
    }
}
