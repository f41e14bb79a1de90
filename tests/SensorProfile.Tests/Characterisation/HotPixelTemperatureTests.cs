using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using Xunit.Abstractions;
using static System.FormattableString;

namespace SensorProfile.Tests.Characterisation;

/// <summary>Temperatures by the hot pixels where the probe is off in some of the sets.</summary>
public sealed class HotPixelTemperatureTests(ITestOutputHelper output)
{
    /// <summary>The longest darks of the two warmest temperatures were 0.8 °C warmer than the probe said.</summary>
    private static CameraDescription Camera =>
        new()
        {
            Width = 320,
            Height = 240,
            Gain = 0.8,
            ReadNoise = 1.6,
            FullWell = 48000,
            Serial = 21,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.1,
                ReferenceTemperature = -10,
                DoublingTemperature = 6.5,
            },
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Activation = 0.9,
                ActivationSpread = 0.05,
                Distribution = new() { Minimum = 1, Maximum = 30 },
            },
            Shots =
            [
                .. Nights.Full(48000, [], [], bias: 10),
                .. new[] { -20.0, -15, -10, -5, 0 }.SelectMany(t =>
                    new[] { 60.0, 120, 300 }.Select(e => new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = e,
                        Temperature = t,
                        Count = 4,
                        ProbeOffset = e == 300 && t > -7 ? -0.8 : 0,
                    })
                ),
            ],
        };

    [Fact]
    public void SetsWithAnOffsetProbeNoLongerSpoilTheDoublingTemperature()
    {
        using var session = new SimulatedSession(Camera, 3);
        Inventory inventory = FrameInventory.Read([session.Folder], new InventoryOptions());
        CameraProfile byHeaders = Characteriser.Run(inventory, new CharacterisationOptions()).Profile;
        CameraProfile byHotPixels = Characteriser
            .Run(inventory, new CharacterisationOptions { Temperatures = TemperatureSource.HotPixels })
            .Profile;
        Measurement wrong = byHeaders.Modes[0].DarkCurrent!.DoublingTemperature!,
            right = byHotPixels.Modes[0].DarkCurrent!.DoublingTemperature!;
        output.WriteLine(
            Invariant($"headers {wrong.Value:F3} ± {wrong.StandardUncertainty:F3}, hot pixels ")
                + Invariant($"{right.Value:F3} ± {right.StandardUncertainty:F3} °C")
        );
        foreach (Finding f in byHotPixels.Findings)
            output.WriteLine(f.Message);

        // 0.8 °C at the warm end of 20 °C: up to 4 % of the doubling temperature, 0.26 °C.
        // The headers may be right by chance, but they do not know it.
        Assert.True(right.StandardUncertainty < 0.3 * wrong.StandardUncertainty);
        Assert.InRange(
            right.Value,
            6.5 - Math.Max(0.05, 4 * right.StandardUncertainty),
            6.5 + Math.Max(0.05, 4 * right.StandardUncertainty)
        );
        Assert.InRange(right.Value, 6.4, 6.6);
        Assert.Contains(byHeaders.Findings, f => f.Code == "probe-offset-between-sets");
        Assert.Contains(byHotPixels.Findings, f => f.Code == "temperatures-by-hot-pixels");
        Assert.Contains(byHotPixels.Findings, f => f.Code == "probe-offset-between-sets");

        // The sets' difference is known to 0.05 °C and right; 768 hot pixels are what a sensor of 9 Mpixel has at one
        // in 12 000.
        foreach (
            HotPixelTemperature set in byHeaders
                .Modes[0]
                .FixedPattern!.Thermometer.Where(t => t.Difference is not null && t.Exposure == 120)
        )
        {
            output.WriteLine(
                FormattableString.Invariant(
                    $"{set.Reading} °C {set.Exposure} s: {set.Difference!.Value:F3} ± {set.Difference.StandardUncertainty:F3}"
                )
            );
            double error = set.Difference.Value - (set.Reading > -7 ? -0.8 : 0);
            Assert.InRange(Math.Abs(error), 0, 3 * set.Difference.StandardUncertainty);
            Assert.InRange(set.Difference.StandardUncertainty, 0, 0.05);
        }
        // The session's list keeps what the probe said.
        Assert.Equal(
            byHeaders.Frames.Session.Select(f => f.Temperature),
            byHotPixels.Frames.Session.Select(f => f.Temperature)
        );
    }
}
