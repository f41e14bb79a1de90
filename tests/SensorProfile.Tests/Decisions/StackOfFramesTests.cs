using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Tests.Decisions;

/// <summary>
/// The noise budget against whole frames: lights and darks written as FITS by the simulator, read back, calibrated,
/// shifted by their dithers and stacked.
/// </summary>
/// <remarks>
/// 240 × 180 pixels, half a per cent of them hot, log-uniform from 0.1 to 2 e-/px/s at −10 °C with the law of the
/// others: 216 of them, so that the sum of their squares is known to about 10 %; it is most of the noise where
/// nothing is rejected, whose noise is then known to 5 %. Of normal noise the standard deviation over 43 200 places is
/// known to 0.35 %. Agreement asked for: 10 %.
/// </remarks>
public sealed class StackOfFramesTests : IDisposable
{
    private const int Width = 240,
        Height = 180,
        Lights = 12;
    private const double Share = 0.005,
        Slowest = 0.1,
        Fastest = 2,
        Gain = 0.8,
        Exposure = 300;
    private readonly string folder = Directory.CreateTempSubdirectory("stack-").FullName;

    [Theory]
    [InlineData(3, 1, false)]
    [InlineData(0, 1, false)]
    [InlineData(-6, 4, false)]
    [InlineData(3, 12, true)]
    [InlineData(8, 6, true)]
    public void TheBudgetAgreesWithTheStack(double offset, int positions, bool rejects)
    {
        double[][] lights = Frames("lights", FrameKind.Light, Lights, Tarn.Reference, level: 0.5 * Exposure),
            darks = Frames("darks", FrameKind.Dark, 16, Tarn.Reference + offset, level: 0);
        double[] master = [.. Enumerable.Range(0, Width * Height).Select(i => darks.Average(d => d[i]))];
        var stack = new StackConditions
        {
            Sky = SkyRate.Given(0.5).Rate,
            ExposureSeconds = Exposure,
            TemperatureCelsius = Tarn.Reference,
            Lights = Lights,
            DitherPositions = positions,
            Rejection = rejects ? Rejection.SigmaClip : Rejection.None,
        };
        var frames = new DarkFrames
        {
            ExposureSeconds = Exposure,
            TemperatureCelsius = Tarn.Reference + offset,
            Frames = darks.Length,
        };
        double simulated = Gain * Deviation(Stack(lights, master, stack));
        SensorModel sensor = SensorReader.Of(Profile(), Profile().Modes[0]).Best;
        double budget = Math.Sqrt(StackNoise.Compute(sensor, stack, stack.Sky.Value, frames).AllPixels!.Value);
        Assert.InRange(budget / simulated, 0.9, 1.1);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private double[][] Frames(string name, FrameKind kind, int count, double celsius, double level)
    {
        var camera = new CameraDescription
        {
            Name = "Tarn-9M",
            Serial = 4,
            Width = Width,
            Height = Height,
            Gain = Gain,
            ReadNoise = 1.5,
            DarkNonuniformity = 0.3,
            FullWell = 50000,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.02,
                ReferenceTemperature = Tarn.Reference,
                DoublingTemperature = 6,
            },
            HotPixels = new HotPixels
            {
                Share = Share,
                Distribution = new HotPixelDistribution
                {
                    Kind = HotPixelTail.LogUniform,
                    Minimum = Slowest,
                    Maximum = Fastest,
                },
            },
            Shots =
            [
                new SensorProfile.Simulation.Parameters.Session.Shot
                {
                    Kind = kind,
                    Exposure = Exposure,
                    Temperature = celsius,
                    Count = count,
                    Level = level,
                },
            ],
        };
        string path = Path.Combine(folder, name);
        Simulator.Write(
            camera,
            path,
            seed: kind == FrameKind.Light ? 31u : 32u,
            new SimulationOptions { WriteTruth = false }
        );
        return [.. Directory.GetFiles(path, "*.fits").Order(StringComparer.Ordinal).Select(Pixels)];
    }

    private static double[] Pixels(string file)
    {
        using FitsFile fits = FitsFile.Open(file);
        double[] pixels = new double[Width * Height];
        fits.RequireFirstImage().ReadRows(0, pixels.AsSpan());
        return pixels;
    }

    /// <summary>
    /// Light i stands at dither position i mod k, 7 columns and 5 rows from the one before; the frame is taken as
    /// endless.
    /// </summary>
    private static double[] Stack(double[][] lights, double[] master, StackConditions stack)
    {
        double[] places = new double[Width * Height],
            samples = new double[lights.Length];
        for (int y = 0; y < Height; y++)
        for (int x = 0; x < Width; x++)
        {
            for (int i = 0; i < lights.Length; i++)
            {
                int step = i % stack.DitherPositions,
                    at = (y + 5 * step) % Height * Width + (x + 7 * step) % Width;
                samples[i] = lights[i][at] - master[at];
            }
            places[y * Width + x] = stack.Clips ? Clipped(samples, stack.RejectionSigma) : samples.Average();
        }
        return places;
    }

    private static double Clipped(double[] samples, double sigma)
    {
        double median = Median(samples),
            limit = sigma * 1.482602218505602 * Median([.. samples.Select(s => Math.Abs(s - median))]);
        return samples.Where(s => Math.Abs(s - median) <= limit).Average();
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static double Deviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));
    }

    /// <summary>
    /// The profile of that camera from its true values: the hot part of a pixel stands on top of an ordinary one.
    /// </summary>
    private static CameraProfile Profile()
    {
        var typical = new Tarn
        {
            Rate = 0.02,
            LogSpread = 0.3,
            HotShare = 0,
            HotFrom = Slowest,
            HotDoubling = 6,
            Width = Width,
            Height = Height,
        };
        double Above(double r) =>
            r < Slowest ? Share : Math.Max(Share * Math.Log(Fastest / r) / Math.Log(Fastest / Slowest), 0);
        double[] thresholds = [.. Enumerable.Range(0, 13).Select(i => Slowest * Math.Pow(10, i / 10.0)), 1.99];
        ModeProfile mode = typical.Mode();
        mode = mode with
        {
            FixedPattern = mode.FixedPattern! with
            {
                RateQuantiles =
                [
                    .. new[] { 0.5, 0.9, 0.99 }.Select(s => new RateQuantile(
                        s,
                        typical.Of(typical.RateAt(s), "e-/px/s")
                    )),
                ],
                HotPixelCurve =
                [
                    .. thresholds.Select(t => new HotPixelCount(
                        t + 0.02,
                        (long)Math.Round(Above(t) * Width * Height),
                        0,
                        0
                    )),
                ],
            },
        };
        return typical.Profile() with { Modes = [mode] };
    }
}
