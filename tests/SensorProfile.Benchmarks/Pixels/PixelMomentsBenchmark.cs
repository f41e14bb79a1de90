using BenchmarkDotNet.Attributes;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Benchmarks.Pixels;

/// <summary>
/// The whole engine on 24 files of 9 megapixels in the page cache, against a plain loop over frames with double maps.
/// </summary>
public class PixelMomentsBenchmark
{
    private const int Width = 3000,
        Height = 3000,
        Frames = 24;
    private string _folder = "";
    private FrameStack? _stack;

    [GlobalSetup]
    public void Setup()
    {
        _folder = Directory.CreateTempSubdirectory("pixel-moments-").FullName;
        var random = new Random(1);
        var frames = new Frame[Frames];
        for (int k = 0; k < Frames; k++)
        {
            var samples = new ushort[Width * Height];
            for (int i = 0; i < samples.Length; i++)
                samples[i] = (ushort)(500 + i % 7 + random.Next(40));
            string path = Path.Combine(_folder, $"frame_{k:00}.fits");
            FitsWriter.Write(path, new FitsImage<ushort>(Width, Height, samples), durable: false);
            frames[k] = new Frame
            {
                Path = path,
                Name = Path.GetFileName(path),
                Width = Width,
                Height = Height,
            };
        }
        _stack = FrameStack.Open(frames);
        var (plain, engine) = (PlainLoop(), Engine());
        for (int i = 0; i < plain.Length; i++)
            if (Math.Abs(plain[i] - engine[i]) > 1e-4 * plain[i])
                throw new InvalidOperationException($"The two ways disagree at pixel {i}: {plain[i]} and {engine[i]}.");
    }

    [GlobalCleanup]
    public void Cleanup()
    {
        _stack?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true)]
    public float[] PlainLoop()
    {
        double[] sums = new double[Width * Height],
            squares = new double[Width * Height];
        var first = new ushort[Width * Height];
        var samples = new ushort[Width * Height];
        _stack!.Samples[0].ReadRows(0, first);
        foreach (var frame in _stack.Samples)
        {
            frame.ReadRows(0, samples);
            for (int i = 0; i < samples.Length; i++)
            {
                double d = samples[i] - first[i];
                sums[i] += d;
                squares[i] += d * d;
            }
        }
        var variance = new float[sums.Length];
        for (int i = 0; i < variance.Length; i++)
            variance[i] = (float)((squares[i] - sums[i] * sums[i] / Frames) / (Frames - 1));
        return variance;
    }

    [Benchmark]
    public float[] Engine() => PixelMoments.Measure(_stack!.Samples).Variance;
}
