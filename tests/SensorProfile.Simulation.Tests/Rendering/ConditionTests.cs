using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Rendering;

/// <summary>What changes from frame to frame.</summary>
public class ConditionTests
{
    private static readonly CameraDescription Plain = EffectTests.Plain;

    private static double[] Means(CameraDescription camera, params Shot[] shots) =>
        [.. EffectTests.Render(camera, shots).Select(PixelStatistics.Mean)];

    /// <summary>The standard deviation of 60 jitters has a relative standard error of 1/√118 = 9 %.</summary>
    [Fact]
    public void PedestalJitters()
    {
        double[] means = Means(
            Plain with
            {
                Width = 50,
                Height = 40,
                ReadNoise = 0.5,
                Pedestal = new Pedestal { Jitter = 3 },
            },
            EffectTests.Biases(60)
        );
        Assert.InRange(Math.Sqrt(PixelStatistics.Variance(means)), 3 * 0.6, 3 * 1.4);
    }

    [Fact]
    public void PedestalDriftsWithTimeAndTemperature()
    {
        CameraDescription camera = Plain with
        {
            ReadNoise = 0.5,
            Pedestal = new Pedestal { DriftPerHour = 12, DriftPerDegree = 2 },
        };
        double[] means = Means(
            camera,
            new Shot { Kind = FrameKind.Bias, Temperature = -10 },
            new Shot
            {
                Kind = FrameKind.Bias,
                Temperature = -5,
                Pause = 3600 - 2.5,
            }
        );
        Assert.Equal(500, means[0], 0.05);
        Assert.Equal(500 + 12 + 10, means[1], 0.05);
    }

    [Fact]
    public void PedestalMovesInSteps()
    {
        var night = new SimulatedNight(
            Plain with
            {
                Pedestal = new Pedestal { Jitter = 3, Step = 2 },
                Shots = [EffectTests.Biases(30)],
            },
            1
        );
        Assert.All(night.Frames, f => Assert.Equal(0, f.PedestalOffset % 2));
        Assert.True(night.Frames.Select(f => f.PedestalOffset).Distinct().Count() > 2);
    }

    [Fact]
    public void FirstFrameDiffers()
    {
        CameraDescription camera = Plain with
        {
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 1, DoublingTemperature = 6 },
            FirstFrame = new FirstFrame { Offset = 7, DarkFactor = 1.5 },
        };
        double[] means = Means(camera, EffectTests.Darks(80, null, 3));
        Assert.Equal(500 + 7 + 150, means[0], 0.4); // √(129/0.64/30000) = 0.08
        Assert.Equal(600, means[1], 0.4);
        Assert.Equal(600, means[2], 0.4);
    }

    [Fact]
    public void LampDrifts()
    {
        double[] means = Means(Plain with { Lamp = new Lamp { Drift = 0.02 } }, EffectTests.Flats(20000, 3));
        Assert.Equal(1.02, (means[1] - 500) / (means[0] - 500), 0.0003); // √(2/20000/30000) = 0.00006
        Assert.Equal(1.04, (means[2] - 500) / (means[0] - 500), 0.0003);
    }

    [Fact]
    public void LampFlickersDownTheRows()
    {
        CameraDescription camera = Plain with
        {
            Lamp = new Lamp { FlickerAmplitude = 0.2, FlickerRows = 50 },
        };
        ushort[][] frames = EffectTests.Render(
            camera,
            EffectTests.Flats(20000, 2),
            new Shot
            {
                Kind = FrameKind.Light,
                Exposure = 1,
                Level = 20000,
            }
        );
        double[] rows = PixelStatistics.RowMeans(frames[0], 200);
        Assert.Equal(0.2 / Math.Sqrt(2) * 25000, Math.Sqrt(PixelStatistics.Variance(rows)), 50.0);
        Assert.NotEqual(rows, PixelStatistics.RowMeans(frames[1], 200)); // another phase
        Assert.True(Math.Sqrt(PixelStatistics.Variance(PixelStatistics.RowMeans(frames[2], 200))) < 30);
    }

    [Fact]
    public void CosmicRaysLeaveTracks()
    {
        CameraDescription camera = Plain with
        {
            CosmicRays = new CosmicRays
            {
                HitsPerMegapixelSecond = 10,
                ElectronsPerPixel = 5000,
                Length = 2,
            },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Darks(200, null, 1))[0];
        // 60 hits of 1 + floor(2·exponential) pixels, mean 1 + 1/(e^½ − 1) = 2.54: about 152 pixels, above 100 ADU all
        // but 2 %.
        Assert.InRange(frame.Count(v => v > 600), 80, 230);
    }

    [Fact]
    public void TornFramesEndEarly()
    {
        CameraDescription camera = Plain with
        {
            Faults =
            [
                new Fault
                {
                    Shot = 1,
                    Frame = 2,
                    TornFromRow = 101,
                },
            ],
        };
        ushort[][] frames = EffectTests.Render(camera, EffectTests.Flats(20000, 2));
        Assert.All(frames[1].Take(100 * 200), v => Assert.True(v > 20000));
        Assert.All(frames[1].Skip(100 * 200), v => Assert.True(v < 600));
        Assert.All(frames[0], v => Assert.True(v > 20000));
    }

    [Fact]
    public void TornFramesHaveTheirShare()
    {
        CameraDescription camera = Plain with
        {
            Width = 4,
            TornFrames = new TornFrames { Share = 0.3 },
            Shots = [EffectTests.Darks(1, null, 500), EffectTests.Biases(50)],
        };
        IReadOnlyList<SimulatedFrame> frames = new SimulatedNight(camera, 1).Frames;
        Assert.InRange(frames.Take(500).Count(f => f.TornFromRow is not null), 150 - 47, 150 + 47);
        Assert.All(frames.Skip(500), f => Assert.Null(f.TornFromRow));
    }

    [Fact]
    public void ProbeReadsOffTheDie()
    {
        var night = new SimulatedNight(
            Plain with
            {
                Thermometer = new Thermometer { ProbeOffset = 2, Wobble = 0.3 },
                Shots = [EffectTests.Darks(1, -10, 200)],
            },
            1
        );
        Assert.Equal(-12, night.Frames.Average(f => f.DieCelsius), 0.1);
        Assert.Equal(-10, night.Frames.Average(f => f.ReportedCelsius!.Value), 0.1);
        Assert.All(night.Frames, f => Assert.InRange(f.ReportedCelsius!.Value - f.DieCelsius, 2 - 0.0501, 2 + 0.0501));
        Assert.InRange(Math.Sqrt(PixelStatistics.Variance([.. night.Frames.Select(f => f.DieCelsius)])), 0.23, 0.37);
    }

    [Fact]
    public void ProbeSticksOrIsMissing()
    {
        var stuck = new SimulatedNight(
            Plain with
            {
                Thermometer = new Thermometer { StuckAt = 20, Wobble = 1 },
                Shots = [EffectTests.Darks(1, -10, 5)],
            },
            1
        );
        Assert.All(stuck.Frames, f => Assert.Equal(20, f.ReportedCelsius));
        var missing = new SimulatedNight(
            Plain with
            {
                Thermometer = new Thermometer { Missing = true },
                Shots = [EffectTests.Darks(1, -10, 5)],
            },
            1
        );
        Assert.All(missing.Frames, f => Assert.Null(f.ReportedCelsius));
    }

    [Fact]
    public void TargetMayStandInPlaceOfTheReading()
    {
        var night = new SimulatedNight(
            Plain with
            {
                Thermometer = new Thermometer { ReportsTarget = true, Wobble = 1 },
                Shots = [EffectTests.Darks(1, -10, 5)],
            },
            1
        );
        Assert.All(night.Frames, f => Assert.Equal(-10, f.ReportedCelsius));
        Assert.Contains(night.Frames, f => Math.Abs(f.DieCelsius + 10) > 0.2);
    }

    [Fact]
    public void TemperatureDriftsWithinAShot()
    {
        var night = new SimulatedNight(
            Plain with
            {
                Cooled = false,
                Thermometer = new Thermometer { DriftPerHour = 6, Resolution = 0 },
                Shots = [EffectTests.Darks(597.5, 15, 4)],
            },
            1
        );
        Assert.Equal([15, 16, 17, 18], night.Frames.Select(f => Math.Round(f.ReportedCelsius!.Value, 9)));
    }

    [Fact]
    public void TimeRunsOn()
    {
        var night = new SimulatedNight(
            Plain with
            {
                Shots = [EffectTests.Darks(300, -10, 2), EffectTests.Darks(60, -15, 1)],
            },
            1
        );
        Assert.Equal(
            [0, 302.5, 605 + 60 + 200],
            night.Frames.Select(f => (f.StartUtc - night.Frames[0].StartUtc).TotalSeconds)
        );
    }
}
