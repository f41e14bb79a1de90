using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Rendering;

public class CodeProcessingTests
{
    /// <summary>
    /// v' = ½v + ⅛·(four neighbours): variance ¼ + 4/64 = 0.3125, neighbours' covariance 2·½·⅛ = 0.125 along a row →
    /// correlation 0.4.
    /// </summary>
    [Fact]
    public void SmoothingCorrelatesNeighbours()
    {
        CameraDescription camera = EffectTests.Plain with
        {
            ReadNoise = 8,
            InCamera = new InCamera { Smoothing = 0.5 },
        };
        ushort[][] frames = EffectTests.Render(camera, EffectTests.Biases());
        Assert.Equal(0.3125 * 100 + 1.0 / 12, PixelStatistics.PairVariance(frames[0], frames[1]), 2.5);
        Assert.Equal(0.4, PixelStatistics.NeighbourCorrelation(frames[0], frames[1], 200), 0.03);
    }

    [Fact]
    public void SuppressionCutsWhatStandsAlone()
    {
        CameraDescription camera = EffectTests.Plain with
        {
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
            HotPixels = new HotPixels
            {
                Share = 0.001,
                Distribution = new HotPixelDistribution { Minimum = 10, Maximum = 20 },
            },
        };
        ushort[] raw = EffectTests.Render(camera, EffectTests.Darks(100, null, 1))[0];
        ushort[] cut = EffectTests.Render(
            camera with
            {
                InCamera = new InCamera { HotPixelThreshold = 100 },
            },
            EffectTests.Darks(100, null, 1)
        )[0];
        Assert.InRange(raw.Count(v => v > 1500), 10, 60);
        Assert.InRange(cut.Count(v => v > 1500), 0, 3); // a few at the rim are out of its reach
        Assert.Equal(PixelStatistics.Median(raw), PixelStatistics.Median(cut));
    }

    [Fact]
    public void ScalingLeavesGapsInItsColour()
    {
        CameraDescription camera = EffectTests.Plain with
        {
            ReadNoise = 40,
            ColourFilter = "RGGB",
            InCamera = new InCamera { ScaleRed = 1.25 },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Biases(1))[0];
        ushort[] red = [.. frame.Where((_, i) => i / 200 % 2 == 0 && i % 2 == 0)];
        ushort[] green = [.. frame.Where((_, i) => i / 200 % 2 == 0 && i % 2 == 1)];
        // round(1.25·n) takes the remainders 0, 1, 3, 4
        Assert.DoesNotContain(red, v => v % 5 == 2);
        Assert.Contains(green, v => v % 5 == 2);
        Assert.Equal(625, red.Average(v => v), 4.0);
        Assert.Equal(500, green.Average(v => v), 4.0);
    }

    [Fact]
    public void ColoursPassDifferentLight()
    {
        CameraDescription camera = EffectTests.Plain with
        {
            ColourFilter = "GBRG",
            ColourResponse = new ColourResponse { Red = 0.5, Blue = 0.25 },
        };
        ushort[] frame = EffectTests.Render(camera, EffectTests.Flats(16000, 1))[0];
        double Mean(int row, int column) =>
            frame.Where((_, i) => i / 200 % 2 == row && i % 2 == column).Average(v => (double)v);
        Assert.Equal(20500, Mean(0, 0), 8.0);
        Assert.Equal(5500, Mean(0, 1), 5.0);
        Assert.Equal(10500, Mean(1, 0), 6.0);
        Assert.Equal(20500, Mean(1, 1), 8.0);
    }
}
