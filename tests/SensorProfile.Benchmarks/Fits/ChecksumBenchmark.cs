using BenchmarkDotNet.Attributes;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Benchmarks.Fits;

/// <summary>The sum of an 18-megabyte data unit: the definition against the vector form.</summary>
public class ChecksumBenchmark
{
    private readonly byte[] bytes = new byte[2 * 3000 * 3000];

    [GlobalSetup]
    public void Setup()
    {
        new Random(1).NextBytes(bytes);
        if (Checksum.Add(0, bytes) != Checksum.AddScalar(0, bytes))
            throw new InvalidOperationException("The vector form differs from the definition.");
    }

    [Benchmark(Baseline = true)]
    public uint AddScalar() => Checksum.AddScalar(0, bytes);

    [Benchmark]
    public uint Add() => Checksum.Add(0, bytes);
}
