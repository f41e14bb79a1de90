using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Characterisation;

/// <summary>What darks give without a thermometer, without a gain, and with light in them.</summary>
public sealed class NightsWithoutThermometerTests
{
    private const double Rate = 0.3; // e-/px/s at −10 °C, doubling every 6 °C

    private static readonly CameraDescription camera = new()
    {
        Name = "Fell-24C",
        Width = 96,
        Height = 64,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters
        {
            RateAtReference = Rate,
            ReferenceTemperature = -10,
            DoublingTemperature = 6,
        },
    };

    // 24 darks of a cold and a warm night were pooled, and those of the cold one left out as averaged or smoothed.
    [Fact]
    public void EachNightKeepsItsDarksAndGetsItsRate()
    {
        ModeProfile mode = Measured(
            camera with
            {
                Thermometer = new Thermometer { Missing = true },
                Shots = [.. Nights.Full(40000, [], [], bias: 9), .. Night(5), .. Night(15)],
            },
            out CameraProfile profile
        );
        Assert.Empty(profile.Frames.Rejected);
        Assert.Equal([12, 12], mode.DarkNights.Select(n => n.Frames));
        double[] truth = [Rate * Math.Pow(2, 15 / 6.0), Rate * Math.Pow(2, 25 / 6.0)];
        foreach ((DarkNight night, double rate) in mode.DarkNights.Zip(truth))
        {
            Assert.Null(night.Temperature);
            Measurement found = night.TypicalRate!;
            Assert.Equal(rate, found.Value, Math.Max(5 * found.StandardUncertainty, 0.03 * rate));
        }
        Finding order = Assert.Single(profile.Findings, f => f.Code == "nights-ordered");
        Assert.Contains("about 10 °C warmer", order.Message.Replace("10.0", "10"), StringComparison.Ordinal);
        Assert.Null(mode.DarkCurrent);
    }

    // Without a thermometer the colder darks of a night were left out as averaged or smoothed.
    [Fact]
    public void TheColderDarksOfANightAreNotTakenForAveraged()
    {
        Measured(
            camera with
            {
                Thermometer = new Thermometer { Missing = true },
                Shots =
                [
                    .. Nights.Full(40000, [], [], bias: 9),
                    .. Night(15),
                    .. Night(15).Select(shot => shot with { Pause = 60 }),
                    .. Night(5).Select(shot => shot with { Pause = 60 }),
                ],
            },
            out CameraProfile profile
        );
        Assert.DoesNotContain(profile.Findings, f => f.Code == "averaged-frame");
    }

    // The reading stood at −10.0 °C through a night of 5 °C and one of 15 °C, and a rate "at −10 °C" ± 12 % was given.
    [Fact]
    public void AReadingThatTheDarkSignalContradictsIsNotBelieved()
    {
        ModeProfile mode = Measured(
            camera with
            {
                Thermometer = new Thermometer { StuckAt = -10 },
                Shots = [.. Nights.Full(40000, [], [], bias: 9), .. Night(5), .. Night(15)],
            },
            out CameraProfile profile
        );
        Finding said = Assert.Single(profile.Findings, f => f.Code == "temperature-contradicted");
        Assert.Contains("factor of 3.", said.Message, StringComparison.Ordinal); // 2^(10/6) = 3.17
        Assert.Null(mode.DarkCurrent);
        Assert.Empty(profile.Frames.Rejected);
        double[] truth = [Rate * Math.Pow(2, 15 / 6.0), Rate * Math.Pow(2, 25 / 6.0)];
        foreach ((DarkNight night, double rate) in mode.DarkNights.Zip(truth))
            Assert.Equal(
                rate,
                night.TypicalRate!.Value,
                Math.Max(5 * night.TypicalRate.StandardUncertainty, 0.03 * rate)
            );
        Assert.Equal(2, mode.DarkNights.Count);
    }

    // 50 min of 300 s darks through which the sensor cools from −2 to −12 °C while the reading stands at −10.0 °C; after
    // an hour beside another set temperature the headers alone would tell.
    [Theory]
    [InlineData(-12, true)]
    [InlineData(0, false)]
    public void AReadingThatStandsStillThroughANightIsNotBelieved(double driftPerHour, bool contradicted)
    {
        ModeProfile mode = Measured(
            camera with
            {
                Thermometer = new Thermometer { StuckAt = -10, DriftPerHour = driftPerHour },
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 1, Maximum = 30 },
                },
                Shots =
                [
                    .. Nights.Full(40000, [], [], bias: 9),
                    new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = 300,
                        Temperature = contradicted ? -2 : -10,
                        Count = 10,
                        Pause = 40_000, // s: bias and flats, at another set temperature, are another session
                    },
                ],
            },
            out CameraProfile profile
        );
        Assert.Equal(contradicted, profile.Findings.Any(f => f.Code == "temperature-contradicted"));
        if (!contradicted)
            Assert.Empty(mode.DarkNights);
        if (contradicted)
        {
            Assert.InRange(mode.DarkNights.Count, 3, 8); // 10 °C in groups of at most 2 °C
            Assert.Contains(
                "in every dark of a night, but during it the dark signal changes",
                profile.Findings.Single(f => f.Code == "temperature-contradicted").Message,
                StringComparison.Ordinal
            );
        }
    }

    // A cooler that holds its set point reads one value, too.
    [Fact]
    public void AReadingThatTheDarkSignalBearsOutIsUsed()
    {
        ModeProfile mode = Measured(
            camera with
            {
                Thermometer = new Thermometer { StuckAt = -10 },
                Shots = [.. Nights.Full(40000, [], [], bias: 9), .. Night(-10), .. Night(-10)],
            },
            out CameraProfile profile
        );
        Assert.DoesNotContain(profile.Findings, f => f.Code == "temperature-contradicted");
        Measurement rate = mode.DarkCurrent!.RateAtReference!;
        Assert.Equal(Rate, rate.Value, 5 * rate.StandardUncertainty);
        Assert.Empty(mode.DarkNights);
    }

    // Without any reading the request for the hot pixels' temperatures ended in "could not be taken".
    [Fact]
    public void HotPixelsPutNightsWithoutAReadingInOrder()
    {
        CameraDescription own = camera with
        {
            Thermometer = new Thermometer { Missing = true },
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Activation = 0.9,
                ActivationSpread = 0.02,
                Distribution = new() { Minimum = 1, Maximum = 30 },
            },
            Shots = [.. Nights.Full(40000, [], [], bias: 9), .. Night(3), .. Night(-5), .. Night(0)],
        };
        using var session = new SimulatedSession(own, 11);
        CameraProfile profile = Characteriser
            .Run(
                FrameInventory.Read([session.Folder], new InventoryOptions()),
                new CharacterisationOptions { Temperatures = TemperatureSource.HotPixels, Quick = true }
            )
            .Profile;
        Finding order = Assert.Single(profile.Findings, f => f.Code == "nights-ordered");
        Assert.StartsWith("By their hot pixels", order.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(profile.Findings, f => f.Code == "temperatures-not-replaced");
        // The coldest was the second, then the third, 5 °C warmer, then the first, 8 °C warmer; within 20 %.
        System.Text.RegularExpressions.MatchCollection warmer = System.Text.RegularExpressions.Regex.Matches(
            order.Message,
            @"UTC, ([0-9.]+) ± ([0-9.]+) °C warmer"
        );
        double[] found =
        [
            .. warmer.Select(w => double.Parse(w.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)),
        ];
        Assert.Equal(2, found.Length);
        Assert.InRange(found[0], 4, 6);
        Assert.InRange(found[1], 6.4, 9.6);
        DateTimeOffset[] starts = [.. profile.Modes[0].DarkNights.Select(n => n.StartUtc!.Value)];
        string[] names =
        [
            .. starts.Select(s => s.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture)),
        ];
        Assert.True(
            order.Message.IndexOf(names[1], StringComparison.Ordinal)
                < order.Message.IndexOf(names[2], StringComparison.Ordinal)
                && order.Message.IndexOf(names[2], StringComparison.Ordinal)
                    < order.Message.IndexOf(names[0], StringComparison.Ordinal),
            order.Message
        );
    }

    [Fact]
    public void DarksAloneGiveRateAndDoublingInAdu()
    {
        ModeProfile mode = Measured(
            camera with
            {
                Shots =
                [
                    .. new double[] { -10, 0, 10 }.SelectMany(t =>
                        new double[] { 60, 180, 300 }.Select(e => new Shot
                        {
                            Kind = FrameKind.Dark,
                            Exposure = e,
                            Temperature = t,
                            Count = 4,
                        })
                    ),
                ],
            },
            out CameraProfile profile
        );
        Assert.Null(mode.DarkCurrent);
        DarkCurrentProfile adu = mode.DarkCurrentAdu!;
        Assert.Equal(6, adu.DoublingTemperature!.Value, 5 * adu.DoublingTemperature.StandardUncertainty);
        Measurement rate = adu.RateAtReference!;
        double truth = Rate / 0.8 * Math.Pow(2, (adu.ReferenceTemperature!.Value + 10) / 6);
        Assert.Equal("ADU/px/s", rate.Unit);
        Assert.Equal(truth, rate.Value, 5 * rate.StandardUncertainty + 0.02 * truth);
        Assert.DoesNotContain(profile.Findings, f => f.Message.Contains("e⁻/px/s", StringComparison.Ordinal));
    }

    // Hot pixels were missing without a gain, although none of their rates needs it.
    [Fact]
    public void DarksAloneGiveHotPixelsInAdu()
    {
        CameraDescription own = camera with
        {
            Gain = 0.4,
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Activation = 0.6,
                ActivationSpread = 0,
                Distribution = new() { Minimum = 20, Maximum = 30 },
            },
        };
        Shot[] darks =
        [
            .. new double[] { -10, 0, 10 }.SelectMany(t =>
                new double[] { 60, 180, 300 }.Select(e => new Shot
                {
                    Kind = FrameKind.Dark,
                    Exposure = e,
                    Temperature = t,
                    Count = 4,
                })
            ),
        ];
        ModeProfile with = Measured(own with { Shots = [.. Nights.Full(40000, [], [], bias: 9), .. darks] }, out _);
        ModeProfile alone = Measured(own with { Shots = darks }, out _);
        HotPixelsAdu adu = alone.HotPixelsAdu!;
        Assert.Null(with.HotPixelsAdu);
        Assert.Equal(with.FixedPattern!.Defects!.Hot, adu.Hot);
        Assert.InRange(adu.Hot, 40, 84); // 61 expected of 6144, Poisson
        // one in a thousand is hot: its rate in ADU is that in electrons over the gain, both at their own reference
        double scale =
            Math.Pow(2, (adu.ReferenceTemperature!.Value - with.FixedPattern.ReferenceTemperature!.Value) / 6) / 0.4;
        Measurement expected = with.FixedPattern.RateQuantiles.Single(q => q.Share == 0.999).Rate,
            found = adu.RateQuantiles.Single(q => q.Share == 0.999).Rate;
        Assert.Equal("ADU/px/s", found.Unit);
        Assert.Equal(scale * expected.Value, found.Value, 0.1 * found.Value);
    }

    // Neither maps nor a table of the hot pixels were written without a gain.
    [Fact]
    public void DarksAloneGiveAMapAndATableOfHotPixelsInAdu()
    {
        CameraDescription own = camera with
        {
            Gain = 0.4,
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Distribution = new() { Minimum = 20, Maximum = 30 },
            },
            Shots =
            [
                .. new double[] { 60, 180, 300 }.Select(e => new Shot
                {
                    Kind = FrameKind.Dark,
                    Exposure = e,
                    Temperature = -10,
                    Count = 4,
                }),
            ],
        };
        using var session = new SimulatedSession(own, 11);
        CharacterisationResult result = session.Characterise();
        HotPixelsAdu adu = result.Profile.Modes[0].HotPixelsAdu!;
        ModeMaps maps = result.Maps[0];
        Assert.Null(maps.DarkRate);
        Assert.Equal(Rate / 0.4, maps.DarkRateAdu!.Order().ElementAt(96 * 32), 0.05 * Rate / 0.4); // the median
        Assert.Equal(adu.Hot, maps.Defects!.Count(d => (d & 2) != 0));
        string[] written = [.. MapFiles.Write(result, session.Folder).Select(file => Path.GetFileName(file)!)];
        Assert.Contains("dark-rate-adu.fits", written);
        Assert.DoesNotContain("dark-rate.fits", written);
        string[] rows = File.ReadAllLines(Path.Combine(session.Folder, "tables", "defects.csv"));
        Assert.EndsWith(",rate_unit", rows[0], StringComparison.Ordinal);
        Assert.True(rows.Length > adu.Hot);
        Assert.All(rows.Skip(1), row => Assert.EndsWith(",ADU/px/s", row, StringComparison.Ordinal));
    }

    [Fact]
    public void ALightLeakIsSaidBeforeTheDoubling()
    {
        ModeProfile mode = Measured(
            camera with
            {
                Shots =
                [
                    .. Nights.Full(40000, [], [], bias: 9),
                    .. new double[] { -20, -15, -10, -5, 0, 5 }.SelectMany(t =>
                        new double[] { 60, 180, 300 }.Select(e => new Shot
                        {
                            Kind = FrameKind.Dark,
                            Exposure = e,
                            Temperature = t,
                            Count = 4,
                            LightLeak = 2,
                        })
                    ),
                ],
            },
            out CameraProfile profile
        );
        DarkFloor floor = DarkFloor.Find(mode.DarkCurrent!)!;
        Assert.True(floor.IsLarge);
        Assert.Equal(6, floor.ThermalDoubling.Value, 5 * floor.ThermalDoubling.StandardUncertainty);
        Finding found = Assert.Single(profile.Findings, f => f.Code == "dark-floor");
        Assert.Equal(Severity.Warning, found.Severity);
    }

    private static Shot[] Night(double celsius) =>
        [
            .. new double[] { 60, 180, 300 }.Select(
                (e, i) =>
                    new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = e,
                        Temperature = celsius,
                        Count = 4,
                        Pause = i == 0 ? 40_000 : 60, // s: the next night
                    }
            ),
        ];

    private static ModeProfile Measured(CameraDescription camera, out CameraProfile profile)
    {
        using var session = new SimulatedSession(camera, 11);
        profile = session.Characterise().Profile;
        return Assert.Single(profile.Modes);
    }
}
