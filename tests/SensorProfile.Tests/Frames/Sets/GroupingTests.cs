using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Frames.Sets;

/// <summary>Frame sets formed of frames made in memory.</summary>
public class GroupingTests
{
    private static readonly DateTimeOffset evening = new(2025, 10, 4, 20, 0, 0, TimeSpan.Zero);

    [Fact]
    public void FramesThatDifferInOneThingAreNotPooled()
    {
        Frame dark = Dark(0, -10);
        Frame[] frames =
        [
            dark,
            dark with
            {
                Path = "b",
                Settings = dark.Settings with { Gain = 200 },
            },
            dark with
            {
                Path = "c",
                Settings = dark.Settings with { Binning = "2x2" },
            },
            dark with
            {
                Path = "d",
                Width = 8,
            },
            dark with
            {
                Path = "e",
                ExposureSeconds = 301,
            },
            dark with
            {
                Path = "f",
                Kind = FrameKind.Light,
            },
            dark with
            {
                Path = "g",
                SetLabel = "x",
            },
            dark with
            {
                Path = "h",
                TemperatureCelsius = -12,
            },
            dark with
            {
                Path = "i",
                Camera = "Fell-24C",
            },
            dark with
            {
                Path = "j",
                ColourFilter = "RGGB",
            },
            dark with
            {
                Path = "k",
                ColourFilter = "GBRG",
            },
            dark with
            {
                Path = "l",
                TemperatureCelsius = null,
            },
            dark with
            {
                Path = "m",
                ExposureSeconds = null,
            },
            dark with
            {
                Path = "n",
                Settings = dark.Settings with { Readout = "Fast" },
            },
        ];
        Assert.Equal(frames.Length, Grouping.Group(frames, 0.5).Sets.Count);
    }

    [Theory]
    [InlineData(300, 300.29, true)] // 0.1 %
    [InlineData(300, 300.31, false)]
    [InlineData(0.5, 0.5009, true)] // 1 ms
    [InlineData(0.5, 0.502, false)]
    [InlineData(0.001, 0.0015, false)] // flat levels in milliseconds stay apart
    [InlineData(0.002, 0.00201, true)] // 1 %
    public void ExposuresAreEqualWithinTheirScatter(double a, double b, bool same) =>
        Assert.Equal(
            same ? 1 : 2,
            Grouping
                .Group([Dark(0, -10) with { ExposureSeconds = a }, Dark(1, -10) with { ExposureSeconds = b }], 0.5)
                .Sets.Count
        );

    [Fact]
    public void ExposuresDoNotChain()
    {
        Frame[] frames =
        [
            .. Enumerable.Range(0, 40).Select(i => Dark(i, -10) with { ExposureSeconds = 300 + 0.2 * i }),
        ];
        Assert.All(Grouping.Group(frames, 0.5).Sets, s =>
            Assert.InRange(
                s.Frames.Max(f => f.ExposureSeconds!.Value) - s.Frames.Min(f => f.ExposureSeconds!.Value),
                0,
                0.31
            )
        );
    }

    [Fact]
    public void BiasFramesPoolWhateverTheirTinyExposureAndWithoutTemperature()
    {
        Frame bias = Dark(0, -10) with { Kind = FrameKind.Bias };
        (IReadOnlyList<FrameSet> sets, _) = Grouping.Group(
            [
                bias with
                {
                    ExposureSeconds = 0,
                },
                bias with
                {
                    Path = "b",
                    ExposureSeconds = 0.0001,
                },
                bias with
                {
                    Path = "c",
                    ExposureSeconds = null,
                },
                bias with
                {
                    Path = "d",
                    ExposureSeconds = 0,
                    TemperatureCelsius = null,
                },
            ],
            0.5
        );
        Assert.Equal(4, Assert.Single(sets).Frames.Count);
        Assert.Equal(-10, sets[0].TemperatureCelsius);
    }

    [Fact]
    public void ASlowDriftIsCutAndNeverChains()
    {
        Frame[] frames = [.. Enumerable.Range(0, 31).Select(i => Dark(i, 15.0 - 0.1 * i))];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> findings) = Grouping.Group(frames, 0.5);
        Assert.Equal(3, sets.Count); // 31 readings over 3.0 °C, at most 1.0 °C each: 11 + 10 + 10
        AssertEveryFrameOnceWithinTolerance(frames, sets, 0.5);
        Assert.All(sets, s => Assert.Equal(s.Frames.Count - 1, Minutes(s))); // neighbours in time stay together
        Assert.Equal(
            "The sensor temperature drifted within one series (31 dark frames of 300 s: 15 to 12 °C, 3 sets), and "
                + "the frames were split into sets that stay within 0.5 °C of their mean: let the camera settle before "
                + "a series, or take more frames at each temperature.",
            Assert.Single(findings).Message
        );
    }

    [Fact]
    public void ADriftInsideASetIsTold()
    {
        Frame[] frames = [.. Enumerable.Range(0, 9).Select(i => Dark(i, 15.0 - 0.1 * i))];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> findings) = Grouping.Group(frames, 0.5);
        Assert.Single(sets);
        Assert.Equal(
            "The sensor temperature drifted within one series (9 dark frames of 300 s: 15 to 14.2 °C), and the "
                + "readings stay close enough for one set: let the camera settle before a series.",
            Assert.Single(findings).Message
        );
    }

    [Fact]
    public void ACoarseProbeThatJumpsDoesNotShatterASet()
    {
        double[] readings = [26, 25.25, 26, 26.75, 26, 26, 25.25, 26, 25.25, 26, 26.75, 26];
        Frame[] frames = [.. readings.Select((t, i) => Dark(i, t))];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> findings) = Grouping.Group(frames, 0.5);
        Assert.Equal(12, Assert.Single(sets).Frames.Count);
        Assert.Equal("temperature-steps", Assert.Single(findings).Code);
    }

    [Fact]
    public void TwoSetPointsOneDegreeApartAreNoJumps()
    {
        Frame[] frames =
        [
            .. Enumerable
                .Range(0, 20)
                .Select(i => Dark(i, i < 10 ? -10 : -11) with { SetTemperatureCelsius = i < 10 ? -10 : -11 }),
        ];
        (IReadOnlyList<FrameSet> sets, _) = Grouping.Group(frames, 0.5);
        Assert.Equal([-11.0, -10.0], sets.Select(s => s.TemperatureCelsius!.Value));
    }

    [Fact]
    public void AnotherNightAtTheSameTemperatureJoins()
    {
        Frame[] frames =
        [
            .. Enumerable.Range(0, 5).Select(i => Dark(i, -10.1)),
            .. Enumerable.Range(60, 5).Select(i => Dark(i, -20)),
            .. Enumerable.Range(1500, 5).Select(i => Dark(i, -9.9)),
        ];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> findings) = Grouping.Group(frames, 0.5);
        Assert.Equal([5, 10], sets.Select(s => s.Frames.Count));
        Assert.Empty(findings);
    }

    [Fact]
    public void OneStrayReadingStandsAloneAndDoesNotCutTheRest()
    {
        Frame[] frames = [.. Enumerable.Range(0, 11).Select(i => Dark(i, i == 5 ? -4 : -10))];
        Assert.Equal([10, 1], Grouping.Group(frames, 0.5).Sets.Select(s => s.Frames.Count));
    }

    /// <summary>
    /// Random walks (fixed seed): whatever the readings, every frame is in exactly one set and within the tolerance of
    /// its mean.
    /// </summary>
    [Fact]
    public void TheRuleHoldsForAnyReadings()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            Random random = new(seed);
            double temperature = -10;
            Frame[] frames =
            [
                .. Enumerable
                    .Range(0, 150)
                    .Select(i => Dark(i, Math.Round(temperature += (random.NextDouble() - 0.5) * (seed % 5) * 0.2, 1))),
            ];
            // 0.5, or up to 1.0 for readings that jump
            AssertEveryFrameOnceWithinTolerance(frames, Grouping.Group(frames, 0.5).Sets, 1.0);
        }
    }

    [Fact]
    public void TheOrderOfTheFilesDoesNotMatter()
    {
        Frame[] frames =
        [
            .. Enumerable.Range(0, 60).Select(i => Dark(i, -10 + i % 7 * 0.3) with { ExposureSeconds = i % 3 * 100 }),
        ];
        Frame[] shuffled = [.. frames];
        new Random(1).Shuffle(shuffled);
        Assert.Equal(Grouping.Group(frames, 0.5).Sets.Select(Names), Grouping.Group(shuffled, 0.5).Sets.Select(Names));
    }

    [Fact]
    public void LevelsGatherExposuresAtOneTemperature()
    {
        FrameSet[] sets = [Set(1, -9.8), Set(10, -10.1), Set(100, -10.2), Set(1, 0.1), Set(10, null)];
        IReadOnlyList<TemperatureGroup> levels = TemperatureGroup.Gather(sets, 0.5);
        Assert.Equal([3, 1, 1], levels.Select(l => l.Sets.Count));
        Assert.Equal(-10.0333, levels[0].TemperatureCelsius!.Value, 4);
        Assert.Null(levels[2].TemperatureCelsius);
    }

    private static FrameSet Set(double exposure, double? temperature) =>
        new()
        {
            Kind = FrameKind.Dark,
            Settings = new(),
            Width = 4,
            Height = 2,
            ExposureSeconds = exposure,
            TemperatureCelsius = temperature,
            Frames = [Dark(0, 0), Dark(1, 0)],
        };

    private static Frame Dark(int minute, double temperature) =>
        new()
        {
            Path = $"/{minute:0000}",
            Name = $"dark_{minute:0000}.fits",
            Kind = FrameKind.Dark,
            ExposureSeconds = 300,
            TemperatureCelsius = temperature,
            Settings = new ModeSettings { Gain = 100 },
            StartUtc = evening.AddMinutes(minute),
            Width = 4,
            Height = 2,
            Camera = "Tarn-9M",
        };

    private static double Minutes(FrameSet set) =>
        (set.Frames[^1].StartUtc!.Value - set.Frames[0].StartUtc!.Value).TotalMinutes;

    private static string Names(FrameSet set) => string.Join(' ', set.Frames.Select(f => f.Name));

    private static void AssertEveryFrameOnceWithinTolerance(
        Frame[] frames,
        IReadOnlyList<FrameSet> sets,
        double tolerance
    )
    {
        Assert.Equal(
            frames.Select(f => f.Name),
            sets.SelectMany(s => s.Frames).Select(f => f.Name).Order(StringComparer.Ordinal)
        );
        foreach (FrameSet set in sets)
            Assert.All(set.Frames, f =>
                Assert.InRange(
                    f.TemperatureCelsius!.Value - set.TemperatureCelsius!.Value,
                    -tolerance - 1e-9,
                    tolerance + 1e-9
                )
            );
    }
}
