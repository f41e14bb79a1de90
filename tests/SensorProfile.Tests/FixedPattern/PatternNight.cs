using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.FixedPattern;

/// <summary>A simulated night in memory, as input of the per-pixel measurements.</summary>
internal sealed class PatternNight
{
    private readonly Dictionary<SimulatedFrame, MemorySamples> frames = [];

    public PatternNight(CameraDescription camera, ulong seed = 1)
    {
        Night = new SimulatedNight(camera, seed);
        Truth = SimulationTruth.Of(Night);
        foreach (SimulatedFrame frame in Night.Frames)
            frames[frame] = new MemorySamples(frame.FileName, camera.Width, camera.Height, Night.Render(frame));
    }

    public SimulatedNight Night { get; }

    public SimulationTruth Truth { get; }

    /// <summary>
    /// A camera of 160 × 120 px: gain 0.5 e-/ADU, 2 e- read noise, 0.05 e-/px/s at −10 °C that doubles every 6.5 °C.
    /// </summary>
    public static CameraDescription Camera(params Shot[] shots) =>
        new()
        {
            Width = 160,
            Height = 120,
            Gain = 0.5,
            ReadNoise = 2,
            Serial = 7,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.05,
                ReferenceTemperature = -10,
                DoublingTemperature = 6.5,
            },
            Shots = shots,
        };

    /// <summary>Bias, and darks of three exposures at each temperature.</summary>
    public static Shot[] Shots(int frames, params double[] temperatures) =>
        [
            new Shot { Kind = FrameKind.Bias, Count = 10 },
            .. temperatures.SelectMany(t =>
                new double[] { 30, 120, 300 }.Select(e => new Shot
                {
                    Kind = FrameKind.Dark,
                    Exposure = e,
                    Temperature = t,
                    Count = frames,
                })
            ),
        ];

    public float[] TrueRate(double celsius = -10) => TrueMaps.DarkRate(Night.Sensor, celsius, 300);

    public IReadOnlyList<IFrameSamples> Of(FrameKind kind) =>
        [.. Night.Frames.Where(f => f.Kind == kind).Select(f => frames[f])];

    public PatternInput Input(double reference = -10)
    {
        CameraDescription camera = Night.Camera;
        double Typical(double t) => Truth.DarkCurrent!.Points.Single(p => p.Temperature == t).TypicalRate;
        double Law(double t) =>
            camera.DarkCurrent!.RateAtReference
            * Math.Pow(
                2,
                (t - camera.DarkCurrent.ReferenceTemperature) / camera.DarkCurrent.DoublingTemperature!.Value
            );
        return new PatternInput
        {
            Width = camera.Width,
            Height = camera.Height,
            Mosaic = ColourMosaic.Of(camera.ColourFilter),
            Gains = [.. Enumerable.Repeat(camera.Gain, camera.ColourFilter is null ? 1 : 4)],
            Series =
            [
                .. Night
                    .Frames.Where(f => f.Kind == FrameKind.Dark)
                    .GroupBy(f => f.TargetCelsius)
                    .OrderBy(g => g.Key)
                    .Select(g => new DarkSeries(
                        g.Key,
                        Typical(g.Key),
                        [.. g.GroupBy(f => f.ExposureSeconds).OrderBy(e => e.Key).Select(e => Exposure(e.Key, e))]
                    )),
            ],
            ReferenceTemperature = reference,
            TypicalAtReference = new Measurement(Typical(reference), 0, "e-/px/s", 1, "truth"),
            TypicalLaw = Law,
            ActivationLaw = Law,
            Unlit = Of(FrameKind.Bias) is { Count: > 1 } bias ? PixelMoments.Measure(bias) : null,
            UnlitSets =
                Of(FrameKind.Bias).Count > 1 ? [Exposure(0, Night.Frames.Where(f => f.Kind == FrameKind.Bias))] : [],
            UnlitVariance = Math.Pow(camera.ReadNoise / camera.Gain, 2) + 1.0 / 12,
        };
    }

    private DarkExposure Exposure(double seconds, IEnumerable<SimulatedFrame> set) =>
        new(seconds, [.. set.Select(f => frames[f])])
        {
            StartSeconds = [.. set.Select(f => f.StartUtc.ToUnixTimeMilliseconds() / 1000.0)],
            FrameLevels =
            [
                .. set.Select(f =>
                    FrameStatistics
                        .Measure(frames[f], ColourMosaic.Of(Night.Camera.ColourFilter))
                        .Channels.Select(c => c.Clipped().Mean)
                        .ToArray()
                ),
            ],
        };

    public PatternResult Measure(double reference = -10) => PatternMeasurement.Measure(Input(reference), null)!;
}
