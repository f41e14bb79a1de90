using SensorProfile.Characterisation.Maps;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Truth;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>
/// A cold sensor whose glow is far stronger than its dark current and reaches over a good part of it.
/// </summary>
public sealed class StrongGlowTests(ITestOutputHelper output)
{
    /// <summary>
    /// 0.0043 e-/px/s at −20 °C, read noise of 1.6 e-; the glow in the middle of the right edge has up to 35 times as
    /// much, and reaches half of the sensor with about as much as that.
    /// </summary>
    private static CameraDescription Camera(bool clamp, double glow) =>
        new()
        {
            Name = "Tarn-9M",
            Width = 320,
            Height = 240,
            Gain = 0.8,
            ReadNoise = 1.6,
            FullWell = 48000,
            BiasLevel = 600,
            Bits = 16,
            Serial = 3,
            ClampBlack = clamp,
            BiasPattern = new BiasPattern { Pixel = 0.8 },
            Pedestal = new Pedestal { Jitter = 0.1 },
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.0043,
                ReferenceTemperature = -20,
                DoublingTemperature = 6.1,
            },
            DarkNonuniformity = 0.25,
            HotPixels = new HotPixels
            {
                Share = 0.002,
                Distribution = new() { Minimum = 0.05, Maximum = 20 },
            },
            Glow =
            [
                new Glow
                {
                    Shape = GlowShape.RightEdge,
                    Rate = glow,
                    Width = 48,
                    Y = 120,
                    Length = 150,
                    DoublingTemperature = 10,
                },
            ],
            Shots = Nights.Full(48000, [-20, -15, -10, -5], [30, 120, 300], darks: 8, bias: 16, flatTemperature: -20),
        };

    [Theory, InlineData(41), InlineData(42)]
    public void ItIsNotTakenForAPinnedBlackLevel(ulong seed)
    {
        // At −20 °C the variance of the whole frame grows by 0.024 e-²/s, the level of the median pixel by 0.009 e-/s,
        // less than half.
        using var session = new SimulatedSession(Camera(clamp: false, glow: 0.15), seed);
        CameraProfile profile = session.Characterise().Profile;
        Assert.DoesNotContain(profile.Findings, f => f.Code == "black-level-pinned");
        DarkCurrentProfile dark = profile.Modes[0].DarkCurrent!;
        Assert.Equal(DarkForm.Level, dark.Form);
        foreach (DarkCurrentPoint point in dark.Points)
        {
            double truth = session
                .Truth.DarkCurrent!.Points.MinBy(p => Math.Abs(p.Temperature - point.Temperature))!
                .TypicalRate;
            double z = (point.TypicalRate!.Value - truth) / point.TypicalRate.StandardUncertainty;
            output.WriteLine(
                $"{point.Temperature:0.0} °C: {point.TypicalRate.Value:0.00000} ± "
                    + $"{point.TypicalRate.StandardUncertainty:0.00000}, truth {truth:0.00000}, z = {z:0.0}"
            );
            Assert.InRange(z, -4, 4);
        }
    }

    [Theory, InlineData(null, 46), InlineData("RGGB", 47)]
    public void ManyWarmPixelsAreNotTakenForAPinnedBlackLevel(string? filter, ulong seed)
    {
        // One pixel in twelve has 0.05 to 0.3 e-/px/s, 0.14 in the mean and 32 times the typical 0.0043: the variance
        // of the whole frame grows by 0.011 e-²/s.
        using var session = new SimulatedSession(
            Camera(clamp: false, glow: 0) with
            {
                ColourFilter = filter,
                Glow = [],
                HotPixels = new HotPixels
                {
                    Share = 0.08,
                    Distribution = new() { Minimum = 0.05, Maximum = 0.3 },
                },
            },
            seed
        );
        CameraProfile profile = session.Characterise().Profile;
        Assert.DoesNotContain(profile.Findings, f => f.Code == "black-level-pinned");
        Assert.Equal(DarkForm.Level, profile.Modes[0].DarkCurrent!.Form);
    }

    /// <summary>12 bits stored as 16, two codes of read noise: a frame's codes are 16 ADU apart.</summary>
    private static CameraDescription Coarse(CameraDescription camera) =>
        camera with
        {
            Bits = 12,
            CodeStep = 16,
            Gain = 0.05,
            FullWell = 3000,
            BiasPattern = new BiasPattern { Pixel = 12 },
            Pedestal = new Pedestal { Jitter = 1.5 },
            Shots = Nights.Full(3000, [-20, -15, -10, -5], [30, 120, 300], darks: 8, bias: 16, flatTemperature: -20),
        };

    [Theory, InlineData(false, 48), InlineData(true, 49)]
    public void CoarseCodesTellItToo(bool clamp, ulong seed)
    {
        using var session = new SimulatedSession(Coarse(Camera(clamp, glow: 0.15)), seed);
        Assert.Equal(clamp, session.Characterise().Profile.Findings.Any(f => f.Code == "black-level-pinned"));
    }

    [Fact]
    public void APinnedBlackLevelIsFoundBesideIt()
    {
        using var session = new SimulatedSession(Camera(clamp: true, glow: 0.15), 43);
        CameraProfile profile = session.Characterise().Profile;
        Assert.Contains(profile.Findings, f => f.Code == "black-level-pinned");
        Assert.Equal(DarkForm.Variance, profile.Modes[0].DarkCurrent!.Form);
    }

    [Theory, InlineData(44), InlineData(45)]
    public void TheMapOfRatesIsNotMovedByIt(ulong seed)
    {
        // A frame of 300 s has 1.6 e- of noise beside a typical signal of 1.3 e- with a tail of glow: its median shifts
        // by some per cent, the joined map of 96 frames hardly.
        using var session = new SimulatedSession(Camera(clamp: false, glow: 0.03), seed);
        CharacterisationResult result = session.Characterise();
        ModeProfile mode = result.Profile.Modes[0];
        double reference = mode.FixedPattern!.ReferenceTemperature!.Value;
        float[] truth = TrueMaps.DarkRate(new SimulatedNight(session.Camera, seed).Sensor, reference, 300),
            map = result.Maps[0].DarkRate!;
        float bright = truth.Order().ElementAt(truth.Length * 9 / 10);
        int[] ordinary = [.. Enumerable.Range(0, truth.Length).Where(i => truth[i] < bright && float.IsFinite(map[i]))];
        double error = ordinary.Average(i => map[i] - truth[i]) / ordinary.Average(i => truth[i]);
        double stated = mode.DarkCurrent!.RateAtReference!.StandardUncertainty / mode.DarkCurrent.RateAtReference.Value;
        output.WriteLine($"map of {reference:0.0} °C {error:+0.0 %;-0.0 %}, rate ± {stated:0.0 %}");
        Assert.InRange(Math.Abs(error), 0, 2.5 * stated + 0.005);
    }
}
