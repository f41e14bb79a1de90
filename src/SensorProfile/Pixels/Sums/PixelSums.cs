using System.Numerics;
using System.Runtime.InteropServices;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Exact sums over frames for every pixel: Σd and Σd² with d = x − x₁, x₁ the pixel's sample in the first frame.
/// </summary>
internal static partial class PixelSums
{
    /// <summary>Up to here Σd fits in 32 bits and N·Σd² in 63: N ≤ 2¹⁵, |d| &lt; 2¹⁶.</summary>
    public const int MaxFrames = 1 << 15;

    /// <summary>Adds a batch of frames to the sums.</summary>
    /// <param name="samples">Frame by frame, each as long as <paramref name="first"/>.</param>
    /// <param name="first">x₁ of every pixel.</param>
    /// <param name="sums">Σd of every pixel.</param>
    /// <param name="squares">Σd² of every pixel.</param>
    public static void Accumulate(
        ReadOnlySpan<ushort> samples,
        ReadOnlySpan<ushort> first,
        Span<int> sums,
        Span<long> squares
    )
    {
        if (first.IsEmpty && samples.IsEmpty)
            return;
        if (
            first.IsEmpty
            || samples.Length % first.Length != 0
            || sums.Length != first.Length
            || squares.Length != first.Length
        )
            throw new ArgumentException(
                $"{samples.Length} samples are not whole frames of {first.Length} pixels with {sums.Length} and "
                    + $"{squares.Length} sums.",
                nameof(samples)
            );
        int done = Vector.IsHardwareAccelerated ? AccumulateVector(samples, first, sums, squares) : 0;
        AccumulateScalar(samples, first, sums, squares, done, first.Length);
    }

    /// <summary>The definition, for the pixels from <paramref name="start"/> up to <paramref name="end"/>.</summary>
    internal static void AccumulateScalar(
        ReadOnlySpan<ushort> samples,
        ReadOnlySpan<ushort> first,
        Span<int> sums,
        Span<long> squares,
        int start,
        int end
    )
    {
        for (int offset = 0; offset < samples.Length; offset += first.Length)
        {
            var frame = samples.Slice(offset, first.Length);
            for (int i = start; i < end; i++)
            {
                int d = frame[i] - first[i];
                sums[i] += d;
                squares[i] += (long)d * d;
            }
        }
    }

    /// <summary>
    /// Takes one vector of pixels at a time through all frames of the batch, Σd² in 32 bits; returns the number of
    /// pixels done.
    /// </summary>
    /// <remarks>d² of one frame always fits in 32 bits unsigned. Σd² of the batch fits when frames·max|d|² &lt; 2³²;
    /// where a pixel varies more (a particle hit, a saturated pixel that flips), its vector goes through the definition
    /// instead.</remarks>
    private static int AccumulateVector(
        ReadOnlySpan<ushort> samples,
        ReadOnlySpan<ushort> first,
        Span<int> sums,
        Span<long> squares
    )
    {
        int frames = samples.Length / first.Length,
            step = Vector<int>.Count,
            i = 0;
        var limit = new Vector<ushort>((ushort)Math.Min(ushort.MaxValue, Math.Sqrt(uint.MaxValue / (uint)frames)));
        ref ushort source = ref MemoryMarshal.GetReference(samples);
        for (; i <= first.Length - Vector<ushort>.Count; i += Vector<ushort>.Count)
        {
            var origin = new Vector<ushort>(first[i..]);
            Vector.Widen(origin, out var originLow, out var originHigh);
            Vector<ushort> lowest = origin,
                highest = origin;
            Vector<uint> sumLow = default,
                sumHigh = default,
                squareLow = default,
                squareHigh = default;
            for (int frame = 0, at = i; frame < frames; frame++, at += first.Length)
            {
                // inside: at + lanes ≤ (frame + 1) · first.Length
                var x = Vector.LoadUnsafe(ref source, (nuint)at);
                lowest = Vector.Min(lowest, x);
                highest = Vector.Max(highest, x);
                Vector.Widen(x, out var low, out var high); // 16 → 32 bits
                low -= originLow; // two's complement: the sign survives
                high -= originHigh;
                sumLow += low;
                sumHigh += high;
                squareLow += low * low;
                squareHigh += high * high;
            }
            if (Vector.GreaterThanAny(Vector.Max(highest - origin, origin - lowest), limit))
            {
                AccumulateScalar(samples, first, sums, squares, i, i + Vector<ushort>.Count);
                continue;
            }
            AddSums(sumLow, sums[i..]);
            AddSums(sumHigh, sums[(i + step)..]);
            AddSquares(squareLow, squares[i..]);
            AddSquares(squareHigh, squares[(i + step)..]);
        }
        return i;
    }

    private static void AddSums(Vector<uint> terms, Span<int> sums) =>
        (new Vector<int>(sums) + terms.As<uint, int>()).CopyTo(sums);

    private static void AddSquares(Vector<uint> terms, Span<long> squares)
    {
        Vector.Widen(terms, out var low, out var high); // 32 → 64 bits
        var rest = squares[Vector<long>.Count..];
        (new Vector<long>(squares) + low.As<ulong, long>()).CopyTo(squares);
        (new Vector<long>(rest) + high.As<ulong, long>()).CopyTo(rest);
    }
}
