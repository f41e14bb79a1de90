using System.Globalization;
using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Characterisation;

/// <summary>
/// A night of a camera without a thermometer that cools down while its darks are taken. They were pooled as one night, and
/// one reading typed in for the first frame stood for all of them.
/// </summary>
public sealed class SilentNightsTests
{
    private const double Rate = 0.1; // e-/px/s at 10 °C
    private const double Doubling = 6.4;

    private static readonly double[] exposures = [15, 60, 180];

    private static readonly CameraDescription camera = new()
    {
        Name = "Fell-24C",
        Width = 192,
        Height = 128,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters
        {
            RateAtReference = Rate,
            ReferenceTemperature = 10,
            DoublingTemperature = Doubling,
        },
        HotPixels = new HotPixels
        {
            Share = 0.005,
            Distribution = new() { Minimum = 1, Maximum = 30 },
        },
        Thermometer = new Thermometer { Missing = true },
    };

    [Fact]
    public void DarksOfDifferentWarmthAreKeptApart()
    {
        CameraProfile profile = Measured([18, 13, 8], out _);
        DarkNight[] groups = [.. profile.Modes[0].DarkNights.OrderBy(n => n.AboveColdest!.Value)];
        Assert.Equal([12, 12, 12], groups.Select(g => g.Frames));
        foreach ((DarkNight group, double celsius) in groups.Zip([8.0, 13, 18]))
        {
            Measurement above = group.AboveColdest!;
            Assert.Equal(celsius - 8, above.Value, 3 * above.StandardUncertainty + 0.1);
            Assert.Equal(
                At(celsius),
                group.TypicalRate!.Value,
                Math.Max(5 * group.TypicalRate.StandardUncertainty, 0.03 * At(celsius))
            );
        }
        Finding split = Assert.Single(profile.Findings, f => f.Code == "night-split-by-hot-pixels");
        Assert.Contains("they were measured in 3 groups, each within 1 °C", split.Message, StringComparison.Ordinal);
        Assert.StartsWith(
            "By their dark current the groups were",
            Assert.Single(profile.Findings, f => f.Code == "nights-ordered").Message,
            StringComparison.Ordinal
        );
        Assert.Null(profile.Modes[0].DarkCurrent);
    }

    [Fact]
    public void ASteadyDriftIsCutWhereItHasGoneTooFar()
    {
        Shot[] darks = [.. Enumerable.Range(0, 20).SelectMany(i => exposures.Select(e => Dark(e, 18 - (i / 2.0), 1)))];
        CameraProfile profile = Measured(darks, out _);
        IReadOnlyList<DarkNight> groups = profile.Modes[0].DarkNights;
        Assert.InRange(groups.Count, 5, 8); // 9.5 °C in groups of at most 2 °C
        Assert.Equal(60, groups.Sum(g => g.Frames));
        Measurement range = groups.MaxBy(g => g.AboveColdest!.Value)!.AboveColdest!;
        Assert.InRange(range.Value, 6.5, 10.5); // means of the outer groups
    }

    [Theory]
    [InlineData(0.005)]
    [InlineData(0)] // without hot pixels nothing can be told, and nothing is
    public void ASteadyNightStaysWhole(double share)
    {
        double[] celsius = share > 0 ? [12, 12, 12] : [18, 13, 8];
        using var session = new SimulatedSession(
            camera with
            {
                HotPixels = camera.HotPixels with { Share = share },
                Shots =
                [
                    .. Nights.Full(40000, [], [], bias: 9),
                    .. celsius.SelectMany(t => exposures.Select(e => Dark(e, t, 4))),
                ],
            },
            11
        );
        CameraProfile profile = Characterise(FrameInventory.Read([session.Folder], new InventoryOptions()));
        Assert.Null(Assert.Single(profile.Modes[0].DarkNights).AboveColdest);
        Assert.DoesNotContain(profile.Findings, f => f.Code == "night-split-by-hot-pixels");
    }

    // All 36 darks were said to be at 18 °C.
    [Fact]
    public void OneReadingSpeaksForDarksAsWarmAlone()
    {
        CameraProfile profile = Measured([18, 13, 8], out _, (0, 18));
        ModeProfile mode = profile.Modes[0];
        DarkCurrentPoint point = Assert.Single(mode.DarkCurrent!.Points);
        Assert.Equal(18, point.Temperature, 0.3);
        Assert.Equal(12, point.Frames);
        Assert.Equal([12, 12], mode.DarkNights.Select(n => n.Frames));
        Assert.Equal(
            At(18),
            point.TypicalRate!.Value,
            Math.Max(5 * point.TypicalRate.StandardUncertainty, 0.03 * At(18))
        );
        Finding carried = Assert.Single(profile.Findings, f => f.Code == "typed-carried-by-hot-pixels");
        Assert.Contains(
            "24 darks, colder or warmer than every reading, have none",
            carried.Message,
            StringComparison.Ordinal
        );
    }

    // Between readings that are hours apart the sensor does not cool along a straight line.
    [Fact]
    public void ReadingsOfSeveralTemperaturesGiveTheLaw()
    {
        Shot[] darks =
        [
            .. Enumerable
                .Range(0, 24)
                .SelectMany(i => exposures.Select(e => Dark(e, 8 + (10 * Math.Exp(-i / 6.0)), 1))),
        ];
        CameraProfile profile = Measured(darks, out _, (0, 18), (71, 8 + (10 * Math.Exp(-23 / 6.0))));
        Assert.Contains(profile.Findings, f => f is { Code: "typed-carried-by-hot-pixels", Severity: Severity.Note });
        Measurement doubling = profile.Modes[0].DarkCurrent!.DoublingTemperature!;
        Assert.Equal(Doubling, doubling.Value, 2 * doubling.StandardUncertainty);
        Measurement rate = profile.Modes[0].DarkCurrent!.RateAtReference!;
        double truth = At(profile.Modes[0].DarkCurrent!.ReferenceTemperature!.Value);
        Assert.Equal(truth, rate.Value, 2 * rate.StandardUncertainty);
        Assert.Empty(profile.Modes[0].DarkNights);
    }

    // The doubling temperature was claimed to 0.16 °C where the readings alone leave 0.4 °C open.
    [Fact]
    public void ReadingsThatAreOffStayWithinWhatIsClaimed()
    {
        Shot[] darks =
        [
            .. Enumerable
                .Range(0, 24)
                .SelectMany(i => exposures.Select(e => Dark(e, 8 + (10 * Math.Exp(-i / 6.0)), 1))),
        ];
        (double First, double Last)[] errors = [(-0.5, -0.5), (-0.5, 0.5), (0.5, -0.5), (0.5, 0.5)];
        double doublings = 0,
            rates = 0;
        foreach ((double first, double last) in errors)
        {
            CameraProfile profile = Measured(
                darks,
                out _,
                (0, 18 + first),
                (71, 8 + (10 * Math.Exp(-23 / 6.0)) + last)
            );
            DarkCurrentProfile dark = profile.Modes[0].DarkCurrent!;
            doublings += Math.Pow(
                (dark.DoublingTemperature!.Value - Doubling) / dark.DoublingTemperature.StandardUncertainty,
                2
            );
            rates += Math.Pow(
                (dark.RateAtReference!.Value - At(dark.ReferenceTemperature!.Value))
                    / dark.RateAtReference.StandardUncertainty,
                2
            );
        }
        // the four corners of a standard uncertainty: their root mean square is one
        Assert.InRange(Math.Sqrt(doublings / errors.Length), 0.6, 1.3);
        Assert.InRange(Math.Sqrt(rates / errors.Length), 0.6, 1.3);
    }

    private static double At(double celsius) => Rate * Math.Pow(2, (celsius - 10) / Doubling);

    private static Shot Dark(double seconds, double celsius, int count) =>
        new()
        {
            Kind = FrameKind.Dark,
            Exposure = seconds,
            Temperature = celsius,
            Count = count,
        };

    private static CameraProfile Measured(
        double[] celsius,
        out Inventory inventory,
        params (int Dark, double Celsius)[] typed
    ) => Measured([.. celsius.SelectMany(t => exposures.Select(e => Dark(e, t, 4)))], out inventory, typed);

    /// <summary>A profile of the darks; readings typed in for some of them, by their place in time.</summary>
    private static CameraProfile Measured(
        Shot[] darks,
        out Inventory inventory,
        params (int Dark, double Celsius)[] typed
    )
    {
        using var session = new SimulatedSession(
            camera with
            {
                Shots = [.. Nights.Full(40000, [], [], bias: 9), .. darks],
            },
            11
        );
        inventory = FrameInventory.Read([session.Folder], new InventoryOptions());
        if (typed.Length > 0)
        {
            Frame[] inTime = [.. inventory.Frames.Where(f => f.Kind == FrameKind.Dark)];
            string table = Path.Combine(session.Folder, "typed.csv");
            File.WriteAllLines(
                table,
                [
                    "file,temperature_c",
                    .. typed.Select(t =>
                        string.Create(CultureInfo.InvariantCulture, $"{inTime[t.Dark].Name},{t.Celsius}")
                    ),
                ]
            );
            inventory = FrameInventory.Read(
                [session.Folder],
                new InventoryOptions { Table = CaptureTable.Read(table) }
            );
        }
        return Characterise(inventory);
    }

    private static CameraProfile Characterise(Inventory inventory) =>
        Characteriser.Run(inventory, new CharacterisationOptions { Quick = true }).Profile;
}
