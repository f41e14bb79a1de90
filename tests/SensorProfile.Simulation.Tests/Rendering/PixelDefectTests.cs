using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests.Rendering;

public class PixelDefectTests
{
    private static readonly CameraDescription Quiet = EffectTests.Plain with { ReadNoise = 0.01, Gain = 1 };

    private static readonly CameraDescription Hot = Quiet with
    {
        DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
        HotPixels = new HotPixels
        {
            Share = 0.02,
            ActivationSpread = 0.1,
            Distribution = new HotPixelDistribution { Minimum = 1, Maximum = 100 },
        },
    };

    /// <summary>
    /// 30 000 × 2 % = 600 ± 24; log-uniform rates have the mean (b − a)/ln(b/a) = 21.5 and a spread of 25 e-/px/s.
    /// </summary>
    [Fact]
    public void HotPixelsHaveTheirShareAndRates()
    {
        SimulationTruth truth = SimulationTruth.Of(new SimulatedNight(Hot, 5));
        Assert.InRange(truth.HotPixels.Count, 600 - 110, 600 + 110);
        Assert.InRange(truth.HotPixels.Average(p => p.Rate), 21.5 - 4.6, 21.5 + 4.6);
        Assert.All(truth.HotPixels, p => Assert.InRange(p.Rate, 1, 100));
        // relative activation energies: 1 ± 0.1/√600
        Assert.InRange(truth.HotPixels.Average(p => 6 / p.Doubling), 0.98, 1.02);
    }

    [Fact]
    public void EveryHotPixelCollectsByItsOwnLaw()
    {
        var night = new SimulatedNight(
            Hot with
            {
                Shots = [EffectTests.Darks(100, -10, 1), EffectTests.Darks(100, 2, 1)],
            },
            5
        );
        ushort[] cold = night.Render(night.Frames[0]);
        ushort[] warm = night.Render(night.Frames[1]);
        int beyond = 0;
        foreach (TrueHotPixel pixel in SimulationTruth.Of(night).HotPixels)
        {
            int index = (pixel.Y - 1) * 200 + pixel.X - 1;
            double coldMean = 100 * pixel.Rate;
            double warmMean = coldMean * Math.Pow(2, 12 / pixel.Doubling);
            bool full = warmMean > 60000;
            beyond += Math.Abs(cold[index] - 500 - coldMean) > 4 * Math.Sqrt(coldMean) + 1 ? 1 : 0;
            beyond += !full && Math.Abs(warm[index] - 500 - warmMean) > 4 * Math.Sqrt(warmMean) + 1 ? 1 : 0;
        }
        Assert.InRange(beyond, 0, 2); // of 1200 beyond 4σ: 0.08 expected
        Assert.Equal(30000 - SimulationTruth.Of(night).HotPixels.Count, cold.Count(v => v == 500));
    }

    [Fact]
    public void ExponentialTailHasItsMean()
    {
        CameraDescription camera = Hot with
        {
            HotPixels = new HotPixels
            {
                Share = 0.2,
                Distribution = new HotPixelDistribution
                {
                    Kind = HotPixelTail.Exponential,
                    Minimum = 2,
                    Scale = 3,
                    Maximum = 1000,
                },
            },
        };
        SimulationTruth truth = SimulationTruth.Of(new SimulatedNight(camera, 5));
        Assert.InRange(truth.HotPixels.Average(p => p.Rate), 5 - 0.18, 5 + 0.18); // 3/√6000 = 0.039
    }

    /// <summary>Two levels 40 e- apart; the share of high states is dwellHigh/(dwellHigh + dwellLow) = 1/3 and
    /// consecutive read-outs 2.5 s apart keep the
    /// correlation exp(−2.5/τ), 1/τ = 1/10 + 1/20.</summary>
    [Fact]
    public void TelegraphPixelsJumpBetweenTwoLevels()
    {
        CameraDescription camera = Quiet with
        {
            TelegraphPixels = new TelegraphPixels
            {
                Share = 0.1,
                Amplitude = 40,
                DwellHigh = 10,
                DwellLow = 20,
            },
        };
        ushort[][] frames = EffectTests.Render(camera, EffectTests.Biases(40));
        int[] jumping =
        [
            .. SimulationTruth
                .Of(new SimulatedNight(camera, 20311014))
                .TelegraphPixels.Select(p => (p.Y - 1) * 200 + p.X - 1),
        ];
        Assert.InRange(jumping.Length, 2700, 3300);
        Assert.All(frames, f => Assert.All(jumping, i => Assert.True(f[i] is 500 or 540)));
        double high = frames.Average(f => jumping.Average(i => f[i] == 540 ? 1.0 : 0));
        // 0.471/√(3000·40/5.3) = 0.0031, doubled against memory
        Assert.InRange(high, 1 / 3.0 - 0.011, 1 / 3.0 + 0.011);
        double together = 0;
        for (int k = 0; k + 1 < frames.Length; k++)
        {
            together +=
                jumping.Average(i =>
                    (frames[k][i] == 540 ? 1 - high : -high) * (frames[k + 1][i] == 540 ? 1 - high : -high)
                ) / (frames.Length - 1);
        }
        Assert.Equal(Math.Exp(-2.5 * (0.1 + 0.05)), together / (high * (1 - high)), 0.02);
    }

    /// <summary>
    /// A rate that jumps: mean rate·duty·t; the share of the exposure spent high has the variance 2p(1 − p)τ/t·(1 − (1
    /// − e^{−t/τ})τ/t).
    /// </summary>
    [Fact]
    public void TelegraphRatesCollectWhileHigh()
    {
        CameraDescription camera = Quiet with
        {
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
            TelegraphPixels = new TelegraphPixels
            {
                Share = 1,
                Rate = 10,
                DwellHigh = 30,
                DwellLow = 60,
            },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Darks(100, null, 1))[0];
        const double p = 1 / 3.0,
            tau = 20,
            ratio = tau / 100;
        double share = 2 * p * (1 - p) * ratio * (1 - ratio * (1 - Math.Exp(-1 / ratio)));
        double variance = share * 1e6 + 1000 * p;
        Assert.InRange((PixelStatistics.Mean(frame) - 500 - 1000 * p) / Math.Sqrt(variance / 30000), -4.5, 4.5);
        Assert.InRange(PixelStatistics.Variance(frame) / variance, 0.97, 1.03);
    }

    [Fact]
    public void DeadPixelsHardlyRespond()
    {
        CameraDescription camera = Quiet with
        {
            DeadPixels = new DeadPixels { Share = 0.01, Response = 0.2 },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Flats(10000, 1))[0];
        int dead = SimulationTruth.Of(new SimulatedNight(camera, 20311014)).DeadPixels.Count;
        Assert.InRange(dead, 220, 380);
        Assert.Equal(dead, frame.Count(v => v is > 2500 - 210 and < 2500 + 210));
    }

    [Fact]
    public void BadColumnsStartAtTheirRow()
    {
        CameraDescription camera = Quiet with
        {
            BadColumns = new BadLines
            {
                Count = 3,
                Rate = 5,
                Response = 0.5,
                Offset = 20,
            },
        };
        ushort[][] frames = EffectTests.Render(
            camera,
            EffectTests.Biases(1),
            EffectTests.Flats(10000, 1),
            EffectTests.Darks(100, null, 1)
        );
        IReadOnlyList<TruePlace> columns = SimulationTruth.Of(new SimulatedNight(camera, 20311014)).BadColumns;
        Assert.Equal(3, columns.Count);
        foreach (TruePlace place in columns)
        {
            double Mean(ushort[] f) =>
                Enumerable.Range(place.Y - 1, 150 - place.Y + 1).Average(r => (double)f[r * 200 + place.X - 1]);
            Assert.Equal(520, Mean(frames[0]), 0.01);
            Assert.Equal(520 + 5005, Mean(frames[1]), 45.0);
            Assert.Equal(520 + 500, Mean(frames[2]), 14.0);
            Assert.True(place.Y == 1 || frames[0][(place.Y - 2) * 200 + place.X - 1] == 500);
        }
    }

    [Fact]
    public void BadRowsStartAtTheirColumn()
    {
        CameraDescription camera = Quiet with
        {
            BadRows = new BadLines
            {
                Count = 4,
                Rate = 5,
                Response = 0.5,
                Offset = 20,
            },
        };
        ushort[][] frames = EffectTests.Render(
            camera,
            EffectTests.Biases(1),
            EffectTests.Flats(10000, 1),
            EffectTests.Darks(100, null, 1)
        );
        SimulatedNight night = new(camera, 20311014);
        IReadOnlyList<TruePlace> rows = SimulationTruth.Of(night).BadRows;
        byte[] classes = TrueMaps.Defects(night.Sensor);
        Assert.Equal(4, rows.Count);
        foreach (TruePlace place in rows)
        {
            double Mean(ushort[] f) =>
                Enumerable.Range(place.X - 1, 200 - place.X + 1).Average(x => (double)f[(place.Y - 1) * 200 + x]);
            Assert.Equal(520, Mean(frames[0]), 0.01);
            Assert.Equal(520 + 5000, Mean(frames[1]), 45.0);
            Assert.Equal(520 + 500, Mean(frames[2]), 14.0);
            Assert.True(place.X == 1 || frames[0][(place.Y - 1) * 200 + place.X - 2] == 500);
            Assert.Equal(
                201 - place.X,
                classes.Skip((place.Y - 1) * 200).Take(200).Count(c => c == (byte)DefectClasses.BadRow)
            );
        }
    }

    [Fact]
    public void ColdPixelsCollectTheirShareOfTheDarkSignal()
    {
        CameraDescription camera = Quiet with
        {
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 100, DoublingTemperature = 6 },
            ColdPixels = new ColdPixels { Share = 0.01, RelativeRate = 0.25 },
        };
        ushort[][] frames = EffectTests.Render(camera, EffectTests.Darks(100, -10, 1), EffectTests.Flats(10000, 1));
        SimulatedNight night = new(camera, 20311014);
        int[] cold = [.. SimulationTruth.Of(night).ColdPixels.Select(p => (p.Y - 1) * 200 + p.X - 1)];
        Assert.InRange(cold.Length, 220, 380); // 300 ± 17
        // 2500 ± 50 against 10000 ± 100 e-
        Assert.Equal(cold, Enumerable.Range(0, 30000).Where(i => frames[0][i] < 500 + 6000));
        Assert.Equal(500 + 2500, cold.Average(i => (double)frames[0][i]), 13.0); // 4.5·50/√300
        Assert.Equal(
            cold,
            Enumerable.Range(0, 30000).Where(i => TrueMaps.Defects(night.Sensor)[i] == (byte)DefectClasses.Cold)
        );
        // light and 1 s of dark: sound, ± 4.5·100
        Assert.All(cold, i => Assert.InRange(frames[1][i], 500 + 10025 - 450, 500 + 10025 + 450));
    }

    [Fact]
    public void ClustersTouchInsideAndKeepApart()
    {
        CameraDescription camera = Hot with
        {
            HotPixels = new HotPixels(),
            HotClusters = new HotClusters
            {
                Count = 40,
                Size = 7,
                Rate = 50,
            },
            Shots = [EffectTests.Darks(100, -10, 1)],
        };
        SimulatedNight night = new(camera, 5);
        SimulationTruth truth = SimulationTruth.Of(night);
        ushort[] frame = night.Render(night.Frames[0]);
        int[] hot = [.. truth.HotClusters.SelectMany(c => c.Pixels).Select(p => (p.Y - 1) * 200 + p.X - 1)];
        Assert.Equal(40, truth.HotClusters.Count);
        Assert.Equal(280, hot.Distinct().Count());
        Assert.Equal(hot.Order(), Enumerable.Range(0, 30000).Where(i => frame[i] > 500 + 2500)); // 5000 ± 71 e-
        Assert.Equal(hot.Order(), truth.HotPixels.Select(p => (p.Y - 1) * 200 + p.X - 1));
        Assert.Equal(
            hot.Order(),
            Enumerable
                .Range(0, 30000)
                .Where(i => TrueMaps.Defects(night.Sensor)[i] == (byte)(DefectClasses.Hot | DefectClasses.Cluster))
        );
        foreach (TrueCluster cluster in truth.HotClusters)
        {
            Assert.All(cluster.Pixels, p =>
                Assert.Contains(cluster.Pixels, q => Math.Abs(p.X - q.X) + Math.Abs(p.Y - q.Y) == 1)
            );
            Assert.All(truth.HotClusters.Where(c => c != cluster).SelectMany(c => c.Pixels), q =>
                Assert.All(cluster.Pixels, p => Assert.True(Math.Max(Math.Abs(p.X - q.X), Math.Abs(p.Y - q.Y)) > 1))
            );
        }
    }

    [Theory]
    [InlineData(GlowShape.LeftEdge, 1, 75, 21, 75)]
    [InlineData(GlowShape.RightEdge, 200, 75, 180, 75)]
    [InlineData(GlowShape.FirstRowEdge, 100, 1, 100, 21)]
    [InlineData(GlowShape.LastRowEdge, 100, 150, 100, 130)]
    [InlineData(GlowShape.Corner, 200, 150, 180, 150)]
    public void GlowFallsOffByItsLength(GlowShape shape, int x, int y, int xAway, int yAway)
    {
        CameraDescription camera = Quiet with
        {
            Glow =
            [
                new Glow
                {
                    Shape = shape,
                    Rate = 100,
                    Width = 20,
                },
            ],
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Darks(100, null, 1))[0];
        Assert.InRange(frame[(y - 1) * 200 + x - 1], 500 + 10000 - 450, 500 + 10000 + 450);
        Assert.InRange(frame[(yAway - 1) * 200 + xAway - 1], 500 + 3679 - 273, 500 + 3679 + 273); // e⁻¹
    }

    [Theory, InlineData(60, -10, 1.0), InlineData(240, -10, 0.5), InlineData(60, 0, 2.0)]
    public void GlowHasLawsOfItsOwn(double exposure, double celsius, double relative)
    {
        var glow = new Glow
        {
            Shape = GlowShape.Blob,
            X = 100,
            Y = 75,
            Width = 1e5,
            Rate = 5,
            ExposureExponent = 0.5,
            DoublingTemperature = 10,
        };
        CameraDescription camera = Quiet with
        {
            Glow = [glow],
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Darks(exposure, celsius, 1))[0];
        double expected = 5 * exposure * relative;
        Assert.InRange((PixelStatistics.Mean(frame) - 500 - expected) / Math.Sqrt(expected / 30000), -4.5, 4.5);
    }
}
