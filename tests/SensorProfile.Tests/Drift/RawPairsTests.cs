using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift;

/// <summary>
/// Pairs of sessions from raw frames on: everything that a real comparison meets is in them, the errors that maps and
/// laws share too.
/// </summary>
public sealed class RawPairsTests(ITestOutputHelper output) : IDisposable
{
    private static readonly int Sessions = LongRuns.Of(20, 50),
        Pairs = 4 * Sessions;

    private readonly string folder = Directory.CreateTempSubdirectory("raw-pairs-").FullName;
    private readonly Dictionary<string, PixelRates> maps = [];

    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>
    /// Nights of one small camera that does not age (50 in the long suite), each compared in eight pairs, with nights 1,
    /// 2, 5 and 11 later: at most 5 % may say "changed"; pairs share nights, which doubles the variance of the count: of
    /// 200 pairs 10 + 3·√(2·9.5) = 23 at most. The z of the dark current pixel by pixel has no bias and is no wider than
    /// stated.
    /// </summary>
    [Fact]
    public void NightsOfAnUnchangedCameraAreSeldomCalledChanged()
    {
        ProfileOnDisk[] nights = [.. Enumerable.Range(0, Sessions).Select(Measure)];
        DriftAnswer[] answers =
        [
            .. from step in (int[])[1, 2, 5, 11]
            from i in Enumerable.Range(0, Sessions)
            select Compare(nights[i], nights[(i + step) % Sessions]),
        ];
        Assert.Equal(Pairs, answers.Length);
        int alarms = answers.Count(a => a.Outcome == DriftVerdict.Changed);
        double[] z =
        [
            .. answers.Select(a => a.Changes.FirstOrDefault(c => c.Quantity == "darkRateByPixel")?.Z).OfType<double>(),
        ];
        output.WriteLine(
            $"false 'has changed': {alarms} of {Pairs} pairs of raw sessions; z of the dark current pixel by pixel "
                + $"over {z.Length}: mean {z.Average():F2}, rms {Math.Sqrt(z.Average(v => v * v)):F2}"
        );
        foreach (var group in answers.SelectMany(a => a.Changes.Where(c => c.Changed)).GroupBy(c => c.Quantity))
            output.WriteLine($"  {group.Key}: {group.Count()}");
        Assert.InRange(alarms, 0, (int)(0.05 * Pairs + 3 * Math.Sqrt(2 * 0.0475 * Pairs)));
        Assert.True(z.Length > 0.9 * Pairs);
        // 0.4 and 0.3 with 50 nights
        double fewer = Math.Sqrt(50.0 / Sessions);
        Assert.InRange(z.Average(), -0.4 * fewer, 0.4 * fewer);
        Assert.True(Math.Sqrt(z.Average(v => v * v)) < 1 + 0.3 * fewer);
        Assert.Equal(0, answers.Count(a => a.Probes.Any(p => p.Verdict == ProbeVerdict.Ageing)));
    }

    private DriftAnswer Compare(ProfileOnDisk first, ProfileOnDisk last) =>
        DriftComparison.Run(
            [first, last],
            (profile, _) => (maps[profile.File], null),
            new DriftOptions { Stack = null, Layouts = 99 }
        );

    private ProfileOnDisk Measure(int night)
    {
        string frames = Path.Combine(folder, "frames");
        Simulator.Write(Camera, frames, (ulong)(9000 + night), new SimulationOptions { WriteTruth = false });
        CharacterisationResult result = Characteriser.Run(
            FrameInventory.Read([frames], new InventoryOptions()),
            new CharacterisationOptions { ReferenceTemperature = -6, Quick = true }
        );
        Directory.Delete(frames, true);
        ModeMaps mode = result.Maps[0];
        string name = FormattableString.Invariant($"night-{night}/profile.json");
        maps[name] = MapRates.Of(
            mode.Width,
            mode.Height,
            -6,
            mode.DarkRate!,
            mode.DarkRateUncertainty!,
            mode.DoublingMap(),
            mode.Defects?.Select(d => (d & 64) != 0).ToArray()
        );
        CameraProfile profile = result.Profile; // nights of one date would count as one: each gets its own
        return new ProfileOnDisk(
            name,
            profile with
            {
                Frames = profile.Frames with
                {
                    Session = [.. profile.Frames.Session.Select(f => f with { StartUtc = f.StartUtc?.AddDays(night) })],
                },
            }
        );
    }

    private static CameraDescription Camera { get; } =
        new()
        {
            Name = "Tarn-9M",
            Serial = 310,
            Width = 192,
            Height = 128,
            Gain = 0.8,
            ReadNoise = 1.6,
            BiasLevel = 600,
            FullWell = 48000,
            Pedestal = new Pedestal { Jitter = 0.15 },
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
            Thermometer = new Thermometer { Wobble = 0.04 },
            Settings = new HeaderSettings { Gain = 100, Offset = 30 },
            Shots =
            [
                new Shot
                {
                    Kind = FrameKind.Bias,
                    Temperature = -10,
                    Count = 6,
                },
                .. Enumerable
                    .Range(1, 7)
                    .Select(i => new Shot
                    {
                        Kind = FrameKind.Flat,
                        Temperature = -10,
                        Exposure = i,
                        Count = 2,
                        Level = 8000 * i,
                    }),
                .. from t in (double[])[5, -1, -6, -10]
                from s in (double[])[30, 150, 300]
                select new Shot
                {
                    Kind = FrameKind.Dark,
                    Temperature = t,
                    Exposure = s,
                    Count = 2,
                },
            ],
        };
}
