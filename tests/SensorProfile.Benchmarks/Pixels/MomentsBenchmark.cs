using BenchmarkDotNet.Attributes;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Benchmarks.Pixels;

/// <summary>From exact sums to variances, 16 Ki pixels.</summary>
public class MomentsBenchmark
{
    private const int Pixels = 16 << 10,
        Frames = 24;
    private readonly ushort[] _first = new ushort[Pixels];
    private readonly int[] _sums = new int[Pixels];
    private readonly long[] _squares = new long[Pixels];
    private readonly float[] _mean = new float[Pixels],
        _variance = new float[Pixels];

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        for (int i = 0; i < Pixels; i++)
            (_first[i], _sums[i], _squares[i]) = (
                (ushort)random.Next(1000),
                random.Next(-200, 200),
                2000 + random.Next(3000)
            );
        Scalar();
        var (mean, variance) = ((float[])_mean.Clone(), (float[])_variance.Clone());
        Vector();
        if (!mean.AsSpan().SequenceEqual(_mean) || !variance.AsSpan().SequenceEqual(_variance))
            throw new InvalidOperationException("The two paths disagree.");
    }

    [Benchmark(Baseline = true)]
    public void Scalar()
    {
        PixelSums.MeansScalar(_first, _sums, Frames, _mean, 0);
        PixelSums.VariancesScalar(_sums, _squares, Frames, _variance, 0, Pixels);
    }

    [Benchmark]
    public void Vector() => PixelSums.Moments(_first, _sums, _squares, Frames, _mean, _variance);
}
