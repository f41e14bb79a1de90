using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Rendering;

/// <summary>Every switch shows in the statistics that it should change. Limits are 4.5 standard errors of the statistic
/// named, for 30 000 pixels;
/// a variance of n normal pixels has the relative standard error √(2/n) = 0.0082.</summary>
public class EffectTests
{
    private const double Sigmas = 4.5;
    private const int Pixels = 200 * 150;
    private static readonly double VarianceError = Math.Sqrt(2.0 / Pixels);

    internal static readonly CameraDescription Plain = new()
    {
        Width = 200,
        Height = 150,
        Gain = 0.8,
        ReadNoise = 3,
        BiasLevel = 500,
    };

    private static readonly CameraDescription Dark = Plain with
    {
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.5, DoublingTemperature = 6 },
    };

    internal static ushort[][] Render(CameraDescription camera, params Shot[] shots)
    {
        var night = new SimulatedNight(camera with { Shots = shots }, 20311014);
        return [.. night.Frames.Select(f => night.Render(f))];
    }

    internal static Shot Biases(int count = 2) => new() { Kind = FrameKind.Bias, Count = count };

    internal static Shot Darks(double exposure, double? temperature = null, int count = 2) =>
        new()
        {
            Kind = FrameKind.Dark,
            Exposure = exposure,
            Temperature = temperature,
            Count = count,
        };

    internal static Shot Flats(double level, int count = 2) =>
        new()
        {
            Kind = FrameKind.Flat,
            Exposure = 1,
            Level = level,
            Count = count,
        };

    private static void Near(double expected, double found, double standardError) =>
        Assert.InRange(found, expected - Sigmas * standardError, expected + Sigmas * standardError);

    [Fact]
    public void BiasHasItsLevelAndReadNoise()
    {
        ushort[][] frames = Render(Plain, Biases());
        double variance = 3 / 0.8 * (3 / 0.8) + 1.0 / 12; // rounding adds 1/12
        Near(500, PixelStatistics.Mean(frames[0]), Math.Sqrt(variance / Pixels));
        Near(variance, PixelStatistics.PairVariance(frames[0], frames[1]), variance * VarianceError);
    }

    [Fact]
    public void ReadNoiseSpreadRaisesTheMeanVariance()
    {
        ushort[][] frames = Render(Plain with { ReadNoiseSpread = 0.5 }, Biases());
        double expected = 9 / 0.64 * Math.Exp(2 * 0.25) + 1.0 / 12; // mean of σ² for ln σ normal with spread 0.5
        // Standard error: var(d²) = 3·E(σ⁴) − E(σ²)², E(σ⁴)/E(σ²)² = e¹ → √((3e − 1)/n)
        Near(
            expected,
            PixelStatistics.PairVariance(frames[0], frames[1]),
            expected * Math.Sqrt((3 * Math.E - 1) / Pixels)
        );
    }

    [Theory, InlineData(50), InlineData(1000), InlineData(30000)]
    public void FlatVarianceFollowsTheGain(double level)
    {
        ushort[][] frames = Render(Plain, Flats(level));
        double variance = (level + 9) / 0.64 + 1.0 / 12;
        Near(500 + level / 0.8, PixelStatistics.Mean(frames[0]), Math.Sqrt(variance / Pixels));
        Near(variance, PixelStatistics.PairVariance(frames[0], frames[1]), variance * VarianceError);
    }

    [Theory, InlineData(-10, 0.5), InlineData(-4, 1.0), InlineData(-16, 0.25)]
    public void DarkSignalGrowsWithExposureAndTemperature(double celsius, double rate)
    {
        ushort[][] frames = Render(Dark, Darks(100, celsius));
        double variance = (rate * 100 + 9) / 0.64 + 1.0 / 12;
        Near(500 + rate * 100 / 0.8, PixelStatistics.Mean(frames[0]), Math.Sqrt(variance / Pixels));
        Near(variance, PixelStatistics.PairVariance(frames[0], frames[1]), variance * VarianceError);
    }

    [Fact]
    public void FloorDoesNotDependOnTemperature()
    {
        CameraDescription floor = Plain with
        {
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6, Floor = 0.4 },
        };
        ushort[][] frames = Render(floor, Darks(100, -20, 1), Darks(100, 10, 1));
        double error = Math.Sqrt((40 + 9) / 0.64 / Pixels);
        Near(550, PixelStatistics.Mean(frames[0]), error);
        Near(550, PixelStatistics.Mean(frames[1]), error);
    }

    [Fact]
    public void StoredCodesAreShifted()
    {
        ushort[][] frames = Render(Plain with { Bits = 14, CodeStep = 4 }, Flats(1e6, 1), Biases());
        Assert.All(frames, f => Assert.DoesNotContain(f, v => v % 4 != 0));
        Assert.Equal(65532, PixelStatistics.Median(frames[0]));
        double variance = 9 / 0.64 + 16.0 / 12;
        Near(variance, PixelStatistics.PairVariance(frames[1], frames[2]), variance * VarianceError);
    }

    /// <summary>
    /// With the bias at 0 a code is 0 below 0.5 ADU, which has the probability Φ(0.5·0.8/3) = 0.55303.
    /// </summary>
    [Fact]
    public void CodesAreClippedAtZero()
    {
        ushort[] frame = Render(Plain with { BiasLevel = 0 }, Biases(1))[0];
        Near(0.55303, frame.Count(v => v == 0) / (double)Pixels, Math.Sqrt(0.55303 * 0.44697 / Pixels));
    }

    [Fact]
    public void FullWellEndsTheResponse()
    {
        ushort[][] frames = Render(Plain with { FullWell = 20000 }, Flats(30000));
        double variance = 9 / 0.64 + 1.0 / 12; // only read noise is left
        Near(500 + 20000 / 0.8, PixelStatistics.Mean(frames[0]), Math.Sqrt(variance / Pixels));
        Near(variance, PixelStatistics.PairVariance(frames[0], frames[1]), variance * VarianceError);
    }

    [Theory, InlineData(5000), InlineData(40000)]
    public void BrighterFatterBendsTheVariance(double level)
    {
        const double a = -4e-6;
        ushort[][] frames = Render(Plain with { BrighterFatter = a }, Flats(level));
        double variance = (level * (1 + a * level) + 9) / 0.64 + 1.0 / 12;
        Near(variance, PixelStatistics.PairVariance(frames[0], frames[1]), variance * VarianceError);
        Near(500 + level / 0.8, PixelStatistics.Mean(frames[0]), Math.Sqrt(variance / Pixels));
    }

    [Fact]
    public void NonlinearityBendsTheMean()
    {
        ushort[] frame = Render(Plain with { Nonlinearity = 0.1, FullWell = 40000 }, Flats(20000, 1))[0];
        double expected = (20000 - 0.1 / 40000 * (20000.0 * 20000 + 20000)) / 0.8; // E(N²) = μ² + μ
        Near(500 + expected, PixelStatistics.Mean(frame), Math.Sqrt(20000 / 0.64 / Pixels));
    }

    [Fact]
    public void NonlinearityNeverTurnsTheResponseDown() =>
        Assert.Equal(65535, PixelStatistics.Median(Render(Plain with { Nonlinearity = 0.2 }, Flats(1e6, 1))[0]));

    [Fact]
    public void ResponseNonuniformityAddsAFixedPattern()
    {
        ushort[][] frames = Render(Plain with { ResponseNonuniformity = 0.02 }, Flats(20000));
        double pattern = Math.Pow(0.02 * 20000 / 0.8, 2);
        double total = pattern + 20000 / 0.64;
        Near(
            pattern,
            PixelStatistics.Variance(frames[0]) - PixelStatistics.PairVariance(frames[0], frames[1]),
            total * VarianceError * 1.5
        );
    }

    [Fact]
    public void VignettingDarkensTheCorners()
    {
        ushort[] frame = Render(Plain with { Vignetting = 0.3, ReadNoise = 0 }, Flats(40000, 1))[0];
        Assert.InRange((frame[0] - 500) * 0.8, 28000 - 4.5 * 168, 28000 + 4.5 * 168);
        Assert.InRange((frame[75 * 200 + 100] - 500) * 0.8, 40000 - 900 - 4, 40000 + 900);
    }

    /// <summary>
    /// Log-normal rates with spread s about the median m: variance m²·(e^{s²} − 1)·e^{s²}; its sample error is
    /// dominated by the tail, 5 % is 4.5 of it.
    /// </summary>
    [Fact]
    public void DarkNonuniformitySpreadsTheRates()
    {
        ushort[][] frames = Render(Dark with { DarkNonuniformity = 0.3, ReadNoise = 0 }, Darks(1000));
        double s2 = 0.09,
            expected = Math.Pow(500 / 0.8, 2) * (Math.Exp(s2) - 1) * Math.Exp(s2);
        double found = PixelStatistics.Variance(frames[0]) - PixelStatistics.PairVariance(frames[0], frames[1]);
        Assert.InRange(found / expected, 0.95, 1.05);
        // the median keeps the typical rate
        Assert.InRange(PixelStatistics.Median(frames[0]), 500 + 625 * 0.985, 500 + 625 * 1.015);
    }

    [Fact]
    public void RowAndColumnNoiseShowInTheirMeans()
    {
        ushort[][] frames = Render(Plain with { RowNoise = 4, ColumnNoise = 2 }, Biases());
        double[] rows =
        [
            .. PixelStatistics.RowMeans(frames[0], 200).Zip(PixelStatistics.RowMeans(frames[1], 200), (a, b) => a - b),
        ];
        double[] columns =
        [
            .. PixelStatistics
                .ColumnMeans(frames[0], 200)
                .Zip(PixelStatistics.ColumnMeans(frames[1], 200), (a, b) => a - b),
        ];
        double row = 2 * (16 + 9.0 / 200) / 0.64,
            column = 2 * (4 + 9.0 / 150) / 0.64;
        Near(row, PixelStatistics.Variance(rows), row * Math.Sqrt(2.0 / 150));
        Near(column, PixelStatistics.Variance(columns), column * Math.Sqrt(2.0 / 200));
    }

    [Fact]
    public void BiasPatternStaysFromFrameToFrame()
    {
        ushort[][] frames = Render(
            Plain with
            {
                BiasPattern = new BiasPattern
                {
                    Column = 5,
                    Row = 3,
                    Pixel = 2,
                },
            },
            Biases()
        );
        double noise = 9 / 0.64 + 1.0 / 12;
        Near(noise, PixelStatistics.PairVariance(frames[0], frames[1]), noise * VarianceError);
        Near(25, PixelStatistics.Variance(PixelStatistics.ColumnMeans(frames[0], 200)), 25 * Math.Sqrt(2.0 / 200));
        Near(9, PixelStatistics.Variance(PixelStatistics.RowMeans(frames[0], 200)), 9 * Math.Sqrt(2.0 / 150));
    }

    [Fact]
    public void BlackClampHidesTheMeanButNotTheNoise()
    {
        ushort[][] frames = Render(
            Dark with
            {
                ClampBlack = true,
                HotPixels = new HotPixels { Share = 0.01 },
            },
            Darks(100)
        );
        double dark = PixelStatistics.PairVariance(frames[0], frames[1]);
        Assert.InRange(PixelStatistics.Mean(frames[0]), 499, 501);
        Assert.True(dark > (50 + 9) / 0.64);
    }

    [Fact]
    public void LightLeakGrowsTowardsTheLastCorner()
    {
        ushort[] frame = Render(Plain, Darks(100, null, 1) with { LightLeak = 2 })[0];
        Near(500 + 200 / 0.8, PixelStatistics.Mean(frame), Math.Sqrt(209 / 0.64 / Pixels));
        Assert.InRange(
            frame.Skip(149 * 200 + 190).Average(v => v),
            500 + 4 * 200 * 0.95 / 0.8 - 60,
            500 + 4 * 200 / 0.8 + 60
        );
    }

    [Fact]
    public void StarsStandOnLightsOnly()
    {
        CameraDescription camera = Plain with
        {
            Gain = 1,
            ReadNoise = 0,
            Stars = new Stars { Count = 1, Brightest = 1e4 },
        };
        ushort[][] frames = Render(camera, new Shot { Kind = FrameKind.Light, Exposure = 1 }, Darks(1, null, 1));
        Near(10000, frames[0].Sum(v => v - 500.0), Math.Sqrt(10000));
        Assert.InRange(frames[0].Count(v => v > 500), 20, 120); // π·(5·3/2.355)² = 127 px reached at most
        Assert.All(frames[1], v => Assert.Equal(500, v));
    }
}
