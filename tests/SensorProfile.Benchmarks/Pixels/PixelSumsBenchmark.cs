using BenchmarkDotNet.Attributes;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Benchmarks.Pixels;

/// <summary>Σd and Σd² of 8 frames of 16 Ki pixels: the innermost loop, in the outer cache of one processor.</summary>
public class PixelSumsBenchmark
{
    private const int Frames = 8,
        Pixels = 16 << 10;
    private readonly ushort[] _samples = new ushort[Frames * Pixels];
    private readonly ushort[] _first = new ushort[Pixels];
    private readonly int[] _sums = new int[Pixels];
    private readonly long[] _squares = new long[Pixels];

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        foreach (var codes in new[] { _samples, _first })
            for (int i = 0; i < codes.Length; i++)
                codes[i] = (ushort)(500 + random.Next(40));
        Scalar();
        var (sums, squares) = ((int[])_sums.Clone(), (long[])_squares.Clone());
        Array.Clear(_sums);
        Array.Clear(_squares);
        Vector();
        if (!sums.AsSpan().SequenceEqual(_sums) || !squares.AsSpan().SequenceEqual(_squares))
            throw new InvalidOperationException("The two paths disagree.");
    }

    [Benchmark(Baseline = true)]
    public void Scalar() => PixelSums.AccumulateScalar(_samples, _first, _sums, _squares, 0, Pixels);

    [Benchmark]
    public void Vector() => PixelSums.Accumulate(_samples, _first, _sums, _squares);
}
