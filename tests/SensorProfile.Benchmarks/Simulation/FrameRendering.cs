using BenchmarkDotNet.Attributes;
using SensorProfile.Frames;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Benchmarks.Simulation;

/// <summary>
/// Rendering one frame of 9 megapixels: divide 9 by the time in seconds for Mpixel/s. Threads 1 is the baseline of the
/// scaling; the pixels are the same.
/// </summary>
public class FrameRendering
{
    private readonly ushort[] _pixels = new ushort[3000 * 3000];
    private SimulatedNight _night = null!;

    /// <summary>Most threads used.</summary>
    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>Draws the sensor once: the rates of 9 million pixels spread log-normally, hot pixels, a glow.</summary>
    [GlobalSetup]
    public void Build()
    {
        var camera = new CameraDescription
        {
            Width = 3000,
            Height = 3000,
            Gain = 0.8,
            ReadNoise = 1.6,
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.01, DoublingTemperature = 6 },
            DarkNonuniformity = 0.2,
            HotPixels = new HotPixels { Share = 0.002 },
            Glow = [new Glow { Rate = 0.05 }],
            Shots =
            [
                new Shot { Kind = FrameKind.Bias },
                new Shot { Kind = FrameKind.Dark, Exposure = 60 },
                new Shot { Kind = FrameKind.Dark, Exposure = 300 },
                new Shot
                {
                    Kind = FrameKind.Flat,
                    Exposure = 1,
                    Level = 20000,
                },
            ],
        };
        _night = new SimulatedNight(camera, 1);
        ushort[] alone = _night.Render(_night.Frames[1], threads: 1);
        if (!alone.AsSpan().SequenceEqual(_night.Render(_night.Frames[1], Threads)))
        {
            throw new InvalidOperationException("The number of threads changed the pixels.");
        }
    }

    /// <summary>Read noise alone.</summary>
    [Benchmark]
    public void Bias() => _night.Render(_night.Frames[0], _pixels, Threads);

    /// <summary>About 0.6 e- of dark signal.</summary>
    [Benchmark]
    public void Dark60() => _night.Render(_night.Frames[1], _pixels, Threads);

    /// <summary>About 3 e- of dark signal.</summary>
    [Benchmark]
    public void Dark300() => _night.Render(_night.Frames[2], _pixels, Threads);

    /// <summary>20 000 photo-electrons.</summary>
    [Benchmark]
    public void Flat() => _night.Render(_night.Frames[3], _pixels, Threads);
}
