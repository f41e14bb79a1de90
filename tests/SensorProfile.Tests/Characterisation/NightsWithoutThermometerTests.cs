using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
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
        DarkFloor floor = DarkFloor.Of(mode.DarkCurrent!)!;
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
