using SensorProfile.Fits;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Drift;

/// <summary>A small camera with a dark library from its first year and fresh darks of a later one.</summary>
internal sealed class SimulatedMasters : IDisposable
{
    public const double Gain = 0.8;
    private const int MasterFrames = 40;

    public string Folder { get; } = Directory.CreateTempSubdirectory("masters-").FullName;

    public static CameraDescription Camera(
        double years = 0,
        double exposure = 300,
        int darks = 12,
        int bias = 16,
        double newHot = 0
    ) =>
        new CameraDescription
        {
            Name = "Tarn-9M",
            Serial = 310,
            Width = 200,
            Height = 150,
            Gain = Gain,
            ReadNoise = 1.6,
            BiasLevel = 600,
            FullWell = 48000,
            BiasPattern = new BiasPattern
            {
                Column = 0.4,
                Row = 0.2,
                Pixel = 0.8,
            },
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.012,
                ReferenceTemperature = -10,
                DoublingTemperature = 6.1,
            },
            DarkNonuniformity = 0.25,
            HotPixels = new HotPixels
            {
                Share = 0.004,
                Distribution = new HotPixelDistribution
                {
                    Kind = HotPixelTail.LogUniform,
                    Minimum = 0.05,
                    Maximum = 20,
                },
            },
            Ageing = new Ageing { DarkGrowth = 0.02, NewHotShare = newHot },
            Settings = new HeaderSettings { Gain = 100, Offset = 30 },
            Shots =
            [
                .. bias > 0
                    ?
                    [
                        new Shot
                        {
                            Kind = FrameKind.Bias,
                            Temperature = -10,
                            Count = bias,
                        },
                    ]
                    : Array.Empty<Shot>(),
                new Shot
                {
                    Kind = FrameKind.Dark,
                    Temperature = -10,
                    Exposure = exposure,
                    Count = darks,
                },
            ],
        }.Age(years);

    public static CameraProfile Profile { get; } =
        new()
        {
            Camera = new CameraInfo
            {
                Name = "Tarn-9M",
                Width = 200,
                Height = 150,
            },
            Modes =
            [
                new ModeProfile
                {
                    Settings = new ModeSettings { Gain = 100, Offset = 30 },
                    Gain = new Measurement(Gain, 0.004, "e-/ADU", 1000, "true value"),
                },
            ],
        };

    /// <summary>Fresh frames on disk.</summary>
    public Inventory Fresh(CameraDescription camera, ulong seed = 2, string name = "fresh")
    {
        string folder = Path.Combine(Folder, name);
        Simulator.Write(camera, folder, seed, new SimulationOptions { WriteTruth = false });
        return FrameInventory.Read([folder], new InventoryOptions());
    }

    /// <summary>Mean dark and mean bias of the library's year, ADU.</summary>
    public static (double[] Dark, double[] Bias) Library(double exposure = 300)
    {
        var night = new SimulatedNight(Camera(exposure: exposure, darks: MasterFrames, bias: MasterFrames), seed: 1);
        return (Mean(night, FrameKind.Dark), Mean(night, FrameKind.Bias));
    }

    /// <summary>Mean of so many darks of any camera, ADU.</summary>
    public static double[] MeanDark(CameraDescription camera, int frames, ulong seed = 1)
    {
        Shot dark = camera.Shots.Single(s => s.Kind == FrameKind.Dark) with { Count = frames };
        return Mean(new SimulatedNight(camera with { Shots = [dark] }, seed), FrameKind.Dark);
    }

    /// <summary>Median dark of the library's year, ADU.</summary>
    public static double[] MedianDark()
    {
        var night = new SimulatedNight(Camera(darks: MasterFrames, bias: 0), seed: 1);
        ushort[][] frames = [.. night.Frames.Select(f => night.Render(f))];
        return
        [
            .. Enumerable
                .Range(0, 200 * 150)
                .Select(i => OrderStatistics.Median([.. frames.Select(f => (double)f[i])])),
        ];
    }

    /// <summary>One dark of the library's year, ADU.</summary>
    public static ushort[] SingleDark()
    {
        var night = new SimulatedNight(Camera(darks: 1, bias: 0), seed: 1);
        return night.Render(night.Frames[0]);
    }

    /// <summary>Writes a master in one of the ways that programs write them.</summary>
    public string Write<T>(
        string name,
        IEnumerable<T> pixels,
        double? statedExposure = 300,
        int width = 200,
        int? statedFrames = MasterFrames
    )
        where T : unmanaged
    {
        string path = Path.Combine(Folder, name);
        List<FitsCard> cards =
        [
            FitsCard.Of("IMAGETYP", "Master Dark"),
            FitsCard.Of("GAIN", 100),
            FitsCard.Of("OFFSET", 30),
            FitsCard.Of("CCD-TEMP", -10.0),
        ];
        if (statedExposure is double t)
            cards.Add(FitsCard.Of("EXPTIME", t));
        if (statedFrames is int n)
            cards.Add(FitsCard.Of("NCOMBINE", n));
        T[] all = [.. pixels];
        FitsWriter.Write(path, new FitsImage<T>(width, all.Length / width, all, cards));
        return path;
    }

    public void Dispose() => Directory.Delete(Folder, true);

    private static double[] Mean(SimulatedNight night, FrameKind kind)
    {
        var sum = new double[200 * 150];
        SimulatedFrame[] frames = [.. night.Frames.Where(f => f.Kind == kind)];
        foreach (SimulatedFrame frame in frames)
        {
            ushort[] pixels = night.Render(frame);
            for (int i = 0; i < sum.Length; i++)
                sum[i] += pixels[i];
        }
        for (int i = 0; i < sum.Length; i++)
            sum[i] /= frames.Length;
        return sum;
    }
}
