using System.Runtime.InteropServices;
using System.Security.Cryptography;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Rendering;

public class DeterminismTests
{
    /// <summary>Everything that draws random numbers is switched on.</summary>
    private static readonly CameraDescription Everything = new()
    {
        Width = 61,
        Height = 37,
        ColourFilter = "RGGB",
        Bits = 14,
        CodeStep = 4,
        Gain = 0.5,
        ReadNoise = 3,
        ReadNoiseSpread = 0.2,
        BiasLevel = 800,
        BiasPattern = new BiasPattern
        {
            Column = 2,
            Row = 1,
            Pixel = 3,
        },
        Pedestal = new Pedestal { Jitter = 2 },
        FullWell = 30000,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.3, DiffusionShare = 0.4 },
        DarkNonuniformity = 0.3,
        HotPixels = new HotPixels { Share = 0.02, ActivationSpread = 0.1 },
        TelegraphPixels = new TelegraphPixels
        {
            Share = 0.02,
            Amplitude = 40,
            Rate = 0.5,
            AmplitudeSpread = 0.5,
            DwellSpread = 0.5,
        },
        DeadPixels = new DeadPixels { Share = 0.01 },
        BadColumns = new BadLines { Count = 2, Rate = 1 },
        Glow =
        [
            new Glow
            {
                Rate = 0.4,
                Width = 10,
                DoublingTemperature = 9,
            },
        ],
        RowNoise = 1,
        ColumnNoise = 1,
        Nonlinearity = 0.01,
        BrighterFatter = -2e-6,
        ResponseNonuniformity = 0.01,
        Vignetting = 0.2,
        Lamp = new Lamp { Jitter = 0.01, FlickerAmplitude = 0.05 },
        Thermometer = new Thermometer { Wobble = 0.1 },
        CosmicRays = new CosmicRays { HitsPerMegapixelSecond = 20 },
        Stars = new Stars { Count = 5, Dither = 3 },
        TornFrames = new TornFrames { Share = 0.2 },
        Ageing = new Ageing
        {
            NewHotShare = 0.01,
            HealedShare = 0.1,
            Patch = new HotPatch(),
        },
        Serial = 9,
        AgeYears = 1.5,
        InCamera = new InCamera { Smoothing = 0.1, ScaleBlue = 0.9 },
        Shots =
        [
            new Shot { Kind = FrameKind.Bias, Count = 2 },
            new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = 60,
                Count = 2,
            },
            new Shot
            {
                Kind = FrameKind.Flat,
                Exposure = 1,
                Level = 12000,
                Count = 2,
            },
            new Shot
            {
                Kind = FrameKind.Light,
                Exposure = 120,
                Level = 100,
                Count = 2,
            },
        ],
    };

    [Theory, InlineData(2), InlineData(3), InlineData(8), InlineData(64)]
    public void TheNumberOfThreadsDoesNotMatter(int threads)
    {
        var night = new SimulatedNight(Everything, 42);
        Assert.All(night.Frames, frame => Assert.Equal(night.Render(frame, threads: 1), night.Render(frame, threads)));
    }

    [Fact]
    public void TheOrderOfRenderingDoesNotMatter()
    {
        var forwards = new SimulatedNight(Everything, 42);
        var backwards = new SimulatedNight(Everything, 42);
        List<string> first = [.. forwards.Frames.Select(f => Hash(forwards.Render(f)))];
        List<string> last = [.. backwards.Frames.Reverse().Select(f => Hash(backwards.Render(f))).Reverse()];
        Assert.Equal(first, last);
    }

    [Fact]
    public void AnotherSeedGivesOtherFrames()
    {
        var one = new SimulatedNight(Everything, 1);
        var two = new SimulatedNight(Everything, 2);
        Assert.NotEqual(one.Render(one.Frames[0]), two.Render(two.Frames[0]));
        // but the sensor with its serial number stays the same
        Assert.Equal(one.Sensor.DarkRate, two.Sensor.DarkRate);
    }

    [Fact]
    public void WithoutASerialNumberAnotherSeedIsAnotherSensor()
    {
        var one = new SimulatedNight(Everything with { Serial = null }, 1);
        var two = new SimulatedNight(Everything with { Serial = null }, 2);
        Assert.NotEqual(one.Sensor.DarkRate, two.Sensor.DarkRate);
    }

    /// <summary>
    /// The bits themselves, so that no change of the draws passes unnoticed: a change is allowed, but it must be meant,
    /// because it changes every seed's frames.
    /// </summary>
    [Fact]
    public void FramesKeepTheirBits()
    {
        var night = new SimulatedNight(Everything, 42);
        Assert.Equal(GoldenHashes, night.Frames.Select(f => Hash(night.Render(f))));
    }

    private static readonly string[] GoldenHashes =
    [
        "de1817444de3ca5d",
        "49d5ccb7ad05ab5e",
        "6bb9bf2ccc9974e6",
        "aeee290d12151211",
        "00651a98ef361d0b",
        "490999b4a630e7dc",
        "1008669dd9a9b4a4",
        "42ac3e67b4ccea30",
    ];

    private static string Hash(ushort[] pixels) =>
        Convert.ToHexStringLower(SHA256.HashData(MemoryMarshal.AsBytes<ushort>(pixels)))[..16];
}
