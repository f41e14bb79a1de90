using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests.Truth;

/// <summary>The truth must be what brute force finds in the frames.</summary>
public class SimulationTruthTests
{
    private static readonly CameraDescription Camera = new()
    {
        Width = 160,
        Height = 120,
        Gain = 0.7,
        ReadNoise = 2,
        ReadNoiseSpread = 0.3,
        BiasLevel = 400,
        BiasPattern = new BiasPattern { Column = 3, Pixel = 1 },
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.5, DiffusionShare = 0.3 },
        DarkNonuniformity = 0.4,
        FullWell = 30000,
        Nonlinearity = 0.02,
        HotPixels = new HotPixels
        {
            Share = 0.02,
            ActivationSpread = 0.2,
            Distribution = new HotPixelDistribution { Maximum = 5 },
        },
        TelegraphPixels = new TelegraphPixels
        {
            Share = 0.01,
            Rate = 2,
            DwellHigh = 20,
            DwellLow = 30,
        },
        Glow =
        [
            new Glow
            {
                Rate = 0.8,
                Width = 40,
                DoublingTemperature = 11,
                ExposureExponent = 1.2,
            },
        ],
        Thermometer = new Thermometer { ProbeOffset = 1.5 },
        Serial = 4,
    };

    /// <summary>
    /// 30 frames of 300 s with the response straightened: the mean of every pixel against the map, in units of its own
    /// error.
    /// </summary>
    [Theory, InlineData(-10.0), InlineData(-2.0)]
    public void RateMapIsWhatTheFramesCollect(double celsius)
    {
        CameraDescription straight = Camera with { Nonlinearity = 0, FullWell = null };
        var night = new SimulatedNight(straight with { Shots = [Darks(300, celsius)] }, 8);
        double[] sums = new double[straight.Width * straight.Height];
        foreach (SimulatedFrame frame in night.Frames)
        {
            ushort[] pixels = night.Render(frame);
            for (int i = 0; i < sums.Length; i++)
            {
                sums[i] += pixels[i];
            }
        }
        float[] rates = TrueMaps.DarkRate(night.Sensor, celsius - 1.5, 300);
        float[] bias = TrueMaps.BiasLevel(night.Sensor);
        byte[] classes = TrueMaps.Defects(night.Sensor);
        double z2 = 0;
        int count = 0;
        for (int i = 0; i < sums.Length; i++)
        {
            if ((classes[i] & (byte)DefectClasses.Telegraph) != 0)
            {
                continue; // wander more than Poisson
            }
            double electrons = (sums[i] / night.Frames.Count - bias[i]) * 0.7;
            double noise = TrueMaps.ReadNoise(night.Sensor)[i];
            double z =
                (electrons - 300 * rates[i]) / Math.Sqrt((300 * rates[i] + noise * noise + 0.04) / night.Frames.Count);
            z2 += z * z;
            count++;
        }
        // mean of n χ²(1)
        Assert.InRange(z2 / count, 1 - 4.5 * Math.Sqrt(2.0 / count), 1 + 4.5 * Math.Sqrt(2.0 / count));
    }

    private static Shot Darks(double exposure, double celsius) =>
        new()
        {
            Kind = FrameKind.Dark,
            Exposure = exposure,
            Temperature = celsius,
            Count = 30,
        };

    [Fact]
    public void PointsAreTheMedianAndMeanOfTheMap()
    {
        var night = new SimulatedNight(Camera with { Shots = [Darks(300, -10), Darks(300, 5)] }, 8);
        TrueDarkCurrent dark = SimulationTruth.Of(night).DarkCurrent!;
        Assert.Equal([-10, 5], dark.Points.Select(p => p.Temperature));
        Assert.Equal([-11.5, 3.5], dark.Points.Select(p => p.DieTemperature));
        foreach (TrueDarkPoint point in dark.Points)
        {
            float[] map = TrueMaps.DarkRate(night.Sensor, point.DieTemperature, 300);
            Assert.Equal(map.Average(v => (double)v), point.MeanRate, 1e-9);
            Assert.Equal(map.Count(v => v < point.TypicalRate), map.Count(v => v > point.TypicalRate));
            Assert.True(point.TypicalRate > point.OrdinaryRate && point.MeanRate > point.TypicalRate);
        }
    }

    [Fact]
    public void DoublingMapIsTheSlopeOfTheRateMap()
    {
        var night = new SimulatedNight(Camera, 8);
        float[] cold = TrueMaps.DarkRate(night.Sensor, -11, 300),
            warm = TrueMaps.DarkRate(night.Sensor, -9, 300);
        float[] doubling = TrueMaps.Doubling(night.Sensor, -10, 300);
        for (int i = 0; i < doubling.Length; i++)
        {
            Assert.Equal(2 * Math.Log(2) / Math.Log((double)warm[i] / cold[i]), doubling[i], 1e-4 * doubling[i]);
        }
    }

    [Fact]
    public void LevelsAndNoiseAreThoseOfTheBiasFrames()
    {
        var night = new SimulatedNight(Camera with { Shots = [new Shot { Kind = FrameKind.Bias, Count = 40 }] }, 8);
        SimulationTruth truth = SimulationTruth.Of(night);
        ushort[][] frames = [.. night.Frames.Select(f => night.Render(f))];
        double variance =
            Enumerable.Range(0, 20).Average(k => PixelStatistics.PairVariance(frames[2 * k], frames[2 * k + 1]))
            - 1.0 / 12;
        Assert.Equal(1, Math.Sqrt(variance) / truth.ReadNoiseAdu, 0.01); // 20 pairs of 19 200 pixels
        Assert.Equal(truth.BiasLevel, frames.Average(PixelStatistics.Mean), 0.02);
        Assert.Equal(truth.ReadNoiseRms, truth.ReadNoiseAdu * truth.Gain, 12);
    }

    [Fact]
    public void SaturationIsWhereTheFlatsEnd()
    {
        foreach (
            CameraDescription camera in (CameraDescription[])
                [
                    Camera,
                    Camera with
                    {
                        FullWell = 60000,
                    },
                    Camera with
                    {
                        FullWell = null,
                    },
                    Camera with
                    {
                        Bits = 12,
                        CodeStep = 2,
                    },
                ]
        )
        {
            var night = new SimulatedNight(
                camera with
                {
                    Shots =
                    [
                        new Shot
                        {
                            Kind = FrameKind.Flat,
                            Level = 200000,
                            Exposure = 1,
                        },
                    ],
                },
                8
            );
            SimulationTruth truth = SimulationTruth.Of(night);
            Assert.Equal(truth.SaturationLevel, PixelStatistics.Median(night.Render(night.Frames[0])), 1.0);
            Assert.Equal(Math.Log2(truth.FullWell / truth.ReadNoiseRms), truth.DynamicRange!.Value, 12);
        }
    }

    /// <summary>
    /// A parabola N(1 − bN) through 5…95 % of full well: deviations from the best line are of the order q/8·(range)², q
    /// = 2 %.
    /// </summary>
    [Fact]
    public void LinearityErrorFollowsTheBend()
    {
        double once = SimulationTruth.Of(new SimulatedNight(Camera, 8)).LinearityError;
        double none = SimulationTruth.Of(new SimulatedNight(Camera with { Nonlinearity = 0 }, 8)).LinearityError;
        Assert.Equal(0, none);
        Assert.InRange(once, 0.05, 0.4);
    }

    [Fact]
    public void GlowHasItsPeakAndTotal()
    {
        var night = new SimulatedNight(Camera, 8);
        TrueGlow glow = SimulationTruth.Of(night).Glow[0];
        float[] map = TrueMaps.Glow(night.Sensor, -10, 300);
        Assert.Equal(map.Max(), glow.Peak, 1e-6);
        Assert.Equal(map.Sum(v => (double)v), glow.Total, 1e-2);
        // 300 s against a reference of 60 s, exponent 1.2
        Assert.Equal(0.8 * Math.Pow(5, 0.2), glow.Peak, 1e-6);
        Assert.Equal(160, glow.X);
    }
}
