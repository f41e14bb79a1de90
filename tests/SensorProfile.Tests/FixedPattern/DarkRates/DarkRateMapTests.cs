using SensorProfile.FixedPattern;
using SensorProfile.Frames;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

/// <summary>Per-pixel rates and their uncertainty against simulated truth.</summary>
public sealed class DarkRateMapTests
{
    [Fact]
    public void RatesScatterAboutTheTruthAsTheirUncertaintySays()
    {
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(6, -10)) with
            {
                DarkNonuniformity = 0.2,
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 1, Maximum = 30 },
                },
            }
        );
        PatternResult result = night.Measure();
        float[] truth = night.TrueRate();
        double[] z = [.. truth.Select((t, i) => (result.Maps.Rate[i] - t) / result.Maps.Uncertainty[i])];
        // 19200 pixels: the mean of z scatters by 0.007; the median that stands for the typical pixel by 0.009 more,
        // and the noise pulls it to the mean of the
        // log-normal rates: 0.05·(1 − e^(−0.02))= 0.001 e-/px/s of an uncertainty of 0.0038. The standard deviation
        // scatters by 0.005.
        Assert.InRange(z.Average(), -0.4, 0.1);
        double sigma = Math.Sqrt(z.Select(v => v * v).Average() - z.Average() * z.Average());
        Assert.InRange(sigma, 0.95, 1.05);
        Assert.InRange(z.Count(v => Math.Abs(v) < 1.96) / 19200.0, 0.93, 0.965);
    }

    [Fact]
    public void AClampAndAJumpingPedestalDoNotMoveTheMap()
    {
        CameraDescription steady = PatternNight.Camera(PatternNight.Shots(4, -10)) with { DarkNonuniformity = 0.2 };
        var plain = new PatternNight(steady).Measure();
        var unsteady = new PatternNight(
            steady with
            {
                ClampBlack = true,
                Pedestal = new Pedestal { Jitter = 5 },
            }
        ).Measure();
        double[] difference = [.. plain.Maps.Rate.Zip(unsteady.Maps.Rate, (a, b) => (double)a - b)];
        // The same noise, other pedestals: only the rounding to codes (0.29 ADU·0.5 e-/ADU over 300 s and 12 frames)
        // differs.
        Assert.InRange(Math.Abs(difference.Average()), 0, 2e-4);
        Assert.InRange(difference.Max(Math.Abs), 0, 0.003);
    }

    [Fact]
    public void TheSameBitsAtAnyThreadCount()
    {
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(3, -15, -10, -5)) with
            {
                HotPixels = new HotPixels { Share = 0.01, ActivationSpread = 0.1 },
            }
        );
        PatternResult one = PatternMeasurement.Measure(night.Input() with { Walk = new() { Threads = 1 } }, null)!;
        PatternResult several = PatternMeasurement.Measure(night.Input() with { Walk = new() { Threads = 5 } }, null)!;
        Assert.Equal(one.Maps.Rate, several.Maps.Rate);
        Assert.Equal(one.Maps.Uncertainty, several.Maps.Uncertainty);
        Assert.Equal(one.Maps.Doubling!, several.Maps.Doubling!);
        Assert.Equal(one.Profile.DoublingByRate, several.Profile.DoublingByRate);
    }

    [Fact]
    public void OneExposureIsEnoughBesideBias()
    {
        Shot[] shots =
        [
            new Shot { Kind = FrameKind.Bias, Count = 10 },
            new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = 300,
                Temperature = -10,
                Count = 6,
            },
        ];
        var night = new PatternNight(
            PatternNight.Camera(shots) with
            {
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 1, Maximum = 30 },
                },
            }
        );
        PatternResult result = night.Measure();
        var hot = night.Truth.HotPixels.Where(p => p.Rate > 2).ToArray();
        // Rate about 2…30 e-/px/s over 300 s and 6 frames: relative noise below 2 %.
        Assert.All(hot, p => Assert.InRange(result.Maps.Rate[(p.Y - 1) * 160 + p.X - 1] / (p.Rate + 0.05), 0.9, 1.1));
    }
}
