using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Fits;
using SensorProfile.Profiles.Files;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.Identity;

public sealed class SensorSortingTests(ITestOutputHelper output) : IDisposable
{
    private static readonly SyntheticMaps Small = new() { Width = 160, Height = 128 };

    private readonly string folder = Directory.CreateTempSubdirectory("sensors-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>
    /// Twenty cameras in two Octobers, three of them Tarn-9M: each session finds the folder of its own sensor, whatever
    /// its name.
    /// </summary>
    [Fact]
    public void TwentyCamerasOfWhichThreeAreOfOneModelSortThemselves()
    {
        string archive = Path.Combine(folder, "archive");
        Dictionary<int, List<string>> folders = [];
        for (int year = 2031; year <= 2032; year++)
        for (int sensor = 0; sensor < 20; sensor++)
        {
            string name = sensor % 7 == 0 ? "Tarn-9M" : $"Camera-{sensor}"; // 0, 7 and 14
            ProfileOnDisk session = Session(
                name,
                year,
                sensor,
                (Small with { Sensor = 400 + sensor }).Measure(100 * year + sensor, growth: year == 2031 ? 1 : 1.05)
            );
            (string kept, IReadOnlyList<Finding> findings) = SensorArchive.Keep(archive, session);
            folders.TryAdd(sensor, []);
            folders[sensor].Add(Path.GetDirectoryName(kept)!);
            Assert.Equal(
                year == 2031 && sensor is 7 or 14,
                findings.Any(f => f.Code == "another-sensor") && year == 2031
            );
        }
        Assert.All(folders.Values, f => Assert.Single(f.Distinct()));
        Assert.Equal(20, folders.Values.Select(f => f[0]).Distinct().Count());
        Assert.Equal(
            ["Tarn-9M", "Tarn-9M-sensor-2", "Tarn-9M-sensor-3"],
            new[] { 0, 7, 14 }.Select(s => Path.GetFileName(folders[s][0]))
        );
    }

    /// <summary>
    /// Seen: kept 0, new 178, healed 100 was called ageing; and again on a small sensor, whose glow at an edge is as that
    /// of any other of its model.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.03)]
    public void AnotherSensorOfTheSameModelIsNeverCalledAgeing(double glow)
    {
        SyntheticMaps glowing = Small with { EdgeGlow = glow };
        DriftAnswer answer = Compare(glowing.Measure(1), (glowing with { Sensor = 311 }).Measure(2));
        output.WriteLine(Assert.Single(answer.OtherSensors).Reason);
        Assert.Equal((DriftVerdict.AnotherSensor, false), (answer.Outcome, answer.Answered));
        Assert.Contains(answer.Findings, f => f.Code == "another-sensor");
        Assert.Empty(answer.Changes);
    }

    /// <summary>
    /// The sensor was warmed up, all its hot pixels healed, and as many turned hot elsewhere: its ordinary pixels still
    /// show that it is the same.
    /// </summary>
    [Fact]
    public void ASensorThatHealedIsStillItself()
    {
        Dictionary<int, double> born = Enumerable
            .Range(0, 80)
            .ToDictionary(k => (4111 + 2917 * k) % (160 * 128), _ => 1.0);
        MapRates before = Small.Measure(1),
            after = Small.Measure(2, born: born, healed: int.MaxValue);
        SensorIdentity identity = SensorIdentity.Compare(Hot(before), Hot(after), () =>
            PatternCorrelation.Measure(before, after)
        );
        output.WriteLine(identity.Evidence);
        Assert.False(identity.Votes.Found);
        Assert.Equal(SensorMatch.Same, identity.Match);
        // ordinary pixels: σ 0.25 of 0.012 with a noise of 0.0042, so r = 1/(1 + (0.0042/0.003)²) = 0.34
        Assert.InRange(identity.Pattern!.Excess, 0.28, 0.40);
        Assert.InRange(identity.Pattern.Expected, 0.28, 0.42);
    }

    /// <summary>Four hot pixels and maps that are all noise: neither speaks.</summary>
    [Fact]
    public void WhereNeitherSpeaksItCannotTell()
    {
        SyntheticMaps quiet = Small with { HotShare = 0.0002, Noise = 0.4 };
        MapRates before = quiet.Measure(1),
            after = (quiet with { Sensor = 311 }).Measure(2);
        Assert.Equal(
            SensorMatch.CannotTell,
            SensorIdentity.Compare(Hot(before), Hot(after), () => PatternCorrelation.Measure(before, after)).Match
        );
    }

    /// <summary>
    /// Stated chance 0.1 % each way: of 30 pairs none is expected to be wrong, two have a chance of 0.05 %.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.05)]
    public void PatternsOfTwoSensorsDoNotAgree(double glow)
    {
        int same = 0;
        for (int i = 0; i < 30; i++)
        {
            PatternCorrelation pattern = PatternCorrelation.Measure(
                (Small with { Sensor = 500 + i, EdgeGlow = glow }).Measure(1 + i),
                (Small with { Sensor = 700 + i, EdgeGlow = glow }).Measure(2000 + i)
            )!;
            if (pattern.Excess > 3.09 * pattern.StandardError)
                same++;
        }
        Assert.InRange(same, 0, 1);
    }

    private static HotPixelSet Hot(MapRates rates) => HotPixelSet.Find(rates, 0.05);

    private static DriftAnswer Compare(MapRates first, MapRates last)
    {
        var random = new Random(3);
        var tarn = new TarnYears { Width = 160, Height = 128 };
        ProfileOnDisk then = tarn.Measure(2031, random),
            now = tarn.Measure(2032, random);
        return DriftComparison.Run(
            [then, now],
            (profile, _) => (profile == then ? first : last, null),
            new DriftOptions { Stack = null, Layouts = 99 }
        );
    }

    private ProfileOnDisk Session(string name, int year, int sensor, MapRates rates)
    {
        ProfileOnDisk profile = new TarnYears { Width = 160, Height = 128 }.Measure(year, new Random(year + sensor));
        string home = Path.Combine(folder, $"{year}-{sensor}"),
            maps = Path.Combine(home, "maps");
        Directory.CreateDirectory(maps);
        ProfileFile.Write(
            Path.Combine(home, "profile.json"),
            profile.Profile with
            {
                Camera = profile.Profile.Camera with { Name = name },
            }
        );
        Write("dark-rate.fits", i => rates.At(i).Rate);
        Write("dark-rate-uncertainty.fits", i => rates.At(i).Uncertainty);
        return ProfileOnDisk.Read(home);

        void Write(string file, Func<int, double> value) =>
            FitsWriter.Write(
                Path.Combine(maps, file),
                new FitsImage<float>(160, 128, Enumerable.Range(0, 160 * 128).Select(i => (float)value(i)).ToArray()),
                durable: false
            );
    }
}
