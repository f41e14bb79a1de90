using SensorProfile.Frames;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Rendering;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>Flickering pixels that are counted against those that there are, with steps and dwell times of physics.</summary>
public sealed class FlickerTruthTests(ITestOutputHelper output)
{
    private const double Visible = 3; // read noises
    private const int Frames = 12; // of 88: fewer frames a step up add less to the scatter than its own chance does

    /// <summary>
    /// "At least" is never more than there are (beyond one false alarm in a million), and holds 80 % of those whose step
    /// exceeds three times the noise and that were in the rarer level of their sets in an eighth of the frames.
    /// </summary>
    [Theory]
    [InlineData(0, 8, 0)]
    [InlineData(0.15, 8, 0)]
    [InlineData(0, 8, 0.2)]
    [InlineData(0.3, 20, 0)]
    public void AtLeastHoldsThoseThatAreVisible(double noiseSpread, double step, double rateStep)
    {
        CameraDescription camera = Camera(noiseSpread, step, rateStep);
        using var session = new SimulatedSession(camera, 31);
        FixedPatternProfile pattern = session.Characterise(quick: false).Profile.Modes[0].FixedPattern!;
        var night = new SimulatedNight(camera, 31);
        TelegraphPixel[] all = [.. night.Sensor.Telegraph.All];
        int loose = all.Count(p => p.Amplitude > Visible * PhysicalCameras.ReadNoise),
            seen = VisiblePixels(night, 31, leastFrames: 3),
            visible = VisiblePixels(night, 31, Frames);
        long told = pattern.Defects!.FlickeringAtLeast!.Value;
        output.WriteLine(
            $"levels {pattern.Defects.Telegraph}, flickering {pattern.Defects.Flickering}, at least {told}; truth "
                + $"{all.Length}, step beyond 3 noises {loose}, seen in three frames {seen}, in {Frames} {visible}"
        );
        foreach (FlickerClass c in pattern.Flicker)
            output.WriteLine($"{c.Thermal} {c.Pixels} {c.Deviation.Value:0.000} {c.MemorySeconds}");
        foreach (FlickerReach r in pattern.FlickerReach)
            output.WriteLine($"reach {r.StepNoise} × noise, {r.DwellSeconds} s: {r.Share:P0}");
        Assert.InRange(told, 0.8 * visible, all.Length + 1);
    }

    /// <summary>
    /// Pixels with a read-out step beyond three times the noise that were in the rarer level of their set in so many
    /// frames: by the simulator's own record of every state.
    /// </summary>
    private static int VisiblePixels(SimulatedNight night, ulong seed, int leastFrames)
    {
        var states = new TelegraphStates(night.Sensor, night.Frames, seed);
        TelegraphPixel[] all = [.. night.Sensor.Telegraph.All];
        var sets = night
            .Frames.Where(f => f.Kind != FrameKind.Flat)
            .GroupBy(f => (f.Kind, f.ExposureSeconds, f.DieCelsius))
            .Select(g => g.ToArray())
            .ToArray();
        return Enumerable
            .Range(0, all.Length)
            .Count(p =>
                all[p].Amplitude > Visible * PhysicalCameras.ReadNoise
                && sets.Sum(set =>
                {
                    int high = set.Count(f => states.HighAtEnd(f.Index, p));
                    return Math.Min(high, set.Length - high);
                }) >= leastFrames
            );
    }

    /// <summary>Without flickering pixels none are told, however much the noise differs from pixel to pixel.</summary>
    [Theory, InlineData(0), InlineData(0.15), InlineData(0.3)]
    public void NoneAreToldWhereThereAreNone(double noiseSpread)
    {
        CameraDescription camera = Camera(noiseSpread, 0, 0);
        using var session = new SimulatedSession(camera, 32);
        DefectCounts counts = session.Characterise(quick: false).Profile.Modes[0].FixedPattern!.Defects!;
        output.WriteLine($"spread {noiseSpread}: at least {counts.FlickeringAtLeast}");
        Assert.InRange(counts.FlickeringAtLeast!.Value, 0, 2);
    }

    private static CameraDescription Camera(double noiseSpread, double step, double rateStep)
    {
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.None);
        return camera with
        {
            Serial = 77,
            ReadNoiseSpread = noiseSpread,
            Physics = camera.Physics! with
            {
                SwitchingTraps =
                    step == 0
                        ? []
                        :
                        [
                            new SwitchingTraps { Share = 0.003, Step = step },
                            new SwitchingTraps { Share = rateStep > 0 ? 0.003 : 0, RateStep = rateStep },
                        ],
            },
        };
    }
}
