using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Summaries;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Characterisation;

/// <summary>One set of darks serves a sweep of gain settings.</summary>
public sealed class CarriedDarksTests
{
    private const double Rate = 0.3;

    private static readonly CameraDescription camera = new()
    {
        Name = "Tarn-9M",
        Width = 96,
        Height = 64,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = Rate, DoublingTemperature = 6 },
        Shots = Nights.Full(40000, [-10, 0, 10], [30, 120, 300], darks: 4, bias: 9),
        Settings = new() { Gain = 0 },
    };

    [Fact]
    public void AModeWithoutDarksTakesThoseOfAnother()
    {
        CameraProfile profile = Measured(High([], 0.2));
        ModeProfile measured = profile.Modes[0],
            carried = profile.Modes[1];
        Assert.Null(measured.DarkCurrent!.CarriedFrom);
        Assert.Equal(measured.Settings, carried.DarkCurrent!.CarriedFrom);
        Measurement own = measured.DarkCurrent.RateAtReference!,
            taken = carried.DarkCurrent.RateAtReference!;
        Assert.Equal(own.Value, taken.Value);
        // root sum of squares with the 5 % of an untested rate
        Assert.Equal(
            Math.Sqrt(Math.Pow(own.StandardUncertainty, 2) + Math.Pow(0.05 * own.Value, 2)),
            taken.StandardUncertainty,
            1e-9
        );
        Assert.Equal(
            measured.FixedPattern!.RateQuantiles.Select(q => q.Rate.Value),
            carried.FixedPattern!.RateQuantiles.Select(q => q.Rate.Value)
        );
        Finding said = Assert.Single(profile.Findings, f => f.Code == "dark-current-carried");
        Assert.StartsWith("At gain 120, offset 30: Dark current", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(profile.Findings, f => f.Severity == Severity.Refusal);

        // and every gain setting has its own answer
        SetpointAnswer[] answers = [.. profile.Modes.Select(m => Setpoint(profile, m))];
        Assert.Contains(answers[1].Findings, f => f.Code == "dark-current-carried");
        Assert.DoesNotContain(answers[0].Findings, f => f.Code == "dark-current-carried");
    }

    // Glow, the rates without it and the bend of the hot pixels' laws were lost on the way.
    [Fact]
    public void WhatGlowsAndHowHotPixelsGrowIsCarriedToo()
    {
        FixedPatternProfile given = new()
        {
            RateQuantiles = [new(0.5, Rated(0.3)), new(0.99, Rated(2))],
            ThermalQuantiles = [new(0.5, Rated(0.2)), new(0.99, Rated(1.5))],
            ThermalCurve = [new(1, 40, 34, 46)],
            GlowClasses = [new(0.9, 0, 0.01), new(0.1, 0.4, 0.02)],
            HotLawBend = new(0.03, -0.002),
            Glow =
            [
                new()
                {
                    Where = "right edge",
                    Peak = Rated(0.8),
                    Total = Rated(900),
                },
            ],
        };
        ModeProfile[] modes = [Mode(100) with { FixedPattern = given, DarkCurrent = Law }, Mode(200)];
        IReadOnlyList<MeasuredMode> filled = CarriedDarks.Fill(
            [.. modes.Select(m => new MeasuredMode(Empty, m, new()))],
            new()
        );
        FixedPatternProfile taken = filled[1].Profile.FixedPattern!;
        Assert.Equal(given.ThermalCurve, taken.ThermalCurve);
        Assert.Equal(given.GlowClasses, taken.GlowClasses);
        Assert.Equal(given.HotLawBend, taken.HotLawBend);
        // 1 % of their own and the 5 % of an untested rate
        foreach (
            (Measurement own, Measurement carried) in given
                .RateQuantiles.Concat(given.ThermalQuantiles)
                .Select(q => q.Rate)
                .Concat([given.Glow[0].Peak!, given.Glow[0].Total!])
                .Zip(
                    taken
                        .RateQuantiles.Concat(taken.ThermalQuantiles)
                        .Select(q => q.Rate)
                        .Concat([taken.Glow[0].Peak!, taken.Glow[0].Total!])
                )
        )
        {
            Assert.Equal(own.Value, carried.Value);
            Assert.Equal(Math.Sqrt(0.01 * 0.01 + 0.05 * 0.05) * own.Value, carried.StandardUncertainty, 1e-9);
        }
    }

    private static Measurement Rated(double value) => new(value, 0.01 * value, "e-/px/s", 100, "given");

    private static DarkCurrentProfile Law { get; } =
        new()
        {
            Selected = "doubling",
            RateAtReference = Rated(0.3),
            ReferenceTemperature = -10,
            DoublingTemperature = new(6, 0.1, "°C", 6, "given"),
        };

    private static ModeProfile Mode(double gain) =>
        new()
        {
            Settings = new() { Gain = gain },
            Gain = new(0.8, 0.001, "e-/ADU", 100, "given"),
        };

    private static ModeFrames Empty { get; } =
        new()
        {
            Settings = new(),
            Mosaic = ColourMosaic.Of(null),
            CodeStep = CodeStep.Find(new IntegerHistogram(0, [1])),
            FlatCodes = [],
            Sets = [],
        };

    // The uncertainty of every law carries the 5 %: the draws of decisions come from its covariance.
    [Fact]
    public void TheLawsAreWidened()
    {
        CameraProfile profile = Measured(High([], 0.2));
        var own = profile.Modes[0].DarkCurrent!.Models[0];
        var taken = profile.Modes[1].DarkCurrent!.Models[0];
        double rate = own.Parameters[0].Value;
        Assert.Equal(own.Covariance[0][0] + 0.0025 * rate * rate, taken.Covariance[0][0], 1e-12);
        Assert.Equal(own.Covariance[1][1], taken.Covariance[1][1]);
    }

    [Fact]
    public void DarksOfASecondSettingTestIt()
    {
        CameraProfile profile = Measured(High(OneTemperature, 0.2));
        Assert.NotNull(profile.Modes[1].DarkCurrent!.CarriedFrom);
        // seen: "no doubling temperature is given" beside the one that was carried
        Assert.DoesNotContain(profile.Findings, f => f.Code == "too-few-temperatures");
        Assert.Contains(
            "agree with it",
            Assert.Single(profile.Findings, f => f.Code == "dark-current-carried").Message,
            StringComparison.Ordinal
        );
        Assert.True(
            profile.Modes[1].DarkCurrent!.RateAtReference!.StandardUncertainty
                < 0.05 * profile.Modes[1].DarkCurrent!.RateAtReference!.Value
        );
    }

    // Darks of another sensor, or a gain by wrong flats: in electrons they disagree, and nothing is carried.
    [Fact]
    public void DarksThatDisagreeAreNotCarried()
    {
        CameraDescription other = High(OneTemperature, 0.2) with
        {
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 1.5 * Rate, DoublingTemperature = 6 },
        };
        CameraProfile profile = Measured(other);
        Assert.Null(profile.Modes[1].DarkCurrent?.CarriedFrom);
        Assert.DoesNotContain(profile.Findings, f => f.Code == "dark-current-carried");
        Finding said = Assert.Single(profile.Findings, f => f.Code == "dark-current-not-carried");
        Assert.Contains("disagree by a factor of 1.", said.Message, StringComparison.Ordinal);
    }

    private static Shot[] OneTemperature =>
        [
            .. new[] { 60.0, 300 }.Select(t => new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = t,
                Temperature = 10,
                Count = 6,
            }),
        ];

    private static CameraDescription High(Shot[] darks, double gain) =>
        camera with
        {
            Gain = gain,
            ReadNoise = 1.3,
            FullWell = 10000,
            Settings = new() { Gain = 120 },
            Shots =
            [
                .. Nights.Full(10000, [10], [60, 300], darks: 2, bias: 9).Where(s => s.Kind != FrameKind.Dark),
                .. darks,
            ],
        };

    private static SetpointAnswer Setpoint(CameraProfile profile, ModeProfile mode) =>
        SetpointAdvice.Find(profile, mode, new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) });

    private static CameraProfile Measured(CameraDescription high)
    {
        using var session = new SimulatedSession(camera, 1);
        using var second = new SimulatedSession(high, 2);
        foreach (string file in Directory.GetFiles(second.Folder, "*.fits"))
            File.Copy(file, Path.Combine(session.Folder, "high-" + Path.GetFileName(file)));
        return session.Characterise().Profile;
    }
}
