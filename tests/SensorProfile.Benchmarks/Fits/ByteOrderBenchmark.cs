using BenchmarkDotNet.Attributes;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Benchmarks.Fits;

/// <summary>Turning the 16-bit pixels of a 9-megapixel frame around: the definition against the vector form.</summary>
public class ByteOrderBenchmark
{
    private const int Pixels = 3000 * 3000;
    private const ushort TopBit = 0x8000;
    private readonly ushort[] from = new ushort[Pixels],
        to = new ushort[Pixels];

    [GlobalSetup]
    public void Setup()
    {
        for (int i = 0; i < Pixels; i++)
            from[i] = (ushort)(i * 40503);
        ushort[] expected = new ushort[Pixels];
        ByteOrder.ReverseAndFlipScalar(from, expected, TopBit);
        ByteOrder.ReverseAndFlip(from, to, TopBit);
        if (!expected.AsSpan().SequenceEqual(to))
            throw new InvalidOperationException("The vector form differs from the definition.");
    }

    [Benchmark(Baseline = true)]
    public void ReverseAndFlipScalar() => ByteOrder.ReverseAndFlipScalar(from, to, TopBit);

    [Benchmark]
    public void ReverseAndFlip() => ByteOrder.ReverseAndFlip(from, to, TopBit);
}
