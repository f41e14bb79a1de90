using BenchmarkDotNet.Attributes;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Benchmarks.Pixels;

/// <summary>One pass over a frame, and one over a pair, of 9 megapixels in memory, on one thread.</summary>
public class FramePassesBenchmark
{
    private static readonly WalkOptions OneThread = new() { Threads = 1 };
    private readonly Samples _a = new(1),
        _b = new(2);

    [Benchmark]
    public object Frame() => FrameStatistics.Measure(_a, ColourMosaic.Of("RGGB"), OneThread);

    [Benchmark]
    public object Pair() => PairStatistics.Measure(_a, _b, ColourMosaic.Of("RGGB"), options: OneThread);

    private sealed class Samples : IFrameSamples
    {
        private readonly ushort[] _all = new ushort[3000 * 3000];

        public Samples(int seed)
        {
            var random = new Random(seed);
            for (int i = 0; i < _all.Length; i++)
                _all[i] = (ushort)(500 + random.Next(40));
        }

        public string Name => "memory";

        public int Width => 3000;

        public int Height => 3000;

        public void ReadRows(int firstRow, Span<ushort> samples) =>
            _all.AsSpan(firstRow * Width, samples.Length).CopyTo(samples);
    }
}
