using SensorProfile.FixedPattern.BlackLevel;

namespace SensorProfile.Tests.FixedPattern.BlackLevel;

/// <summary>Noise of masked pixels from a pair, against sums done by hand and a simulated truth.</summary>
public sealed class MaskedPairTests
{
    [Fact]
    public void AHandfulOfPixelsByHand()
    {
        // differences: rows (1, 3), (−2, 0), (4, 8); row means 2, −1, 6; Σ(d − row mean)² = 2 + 2 + 8 = 12 over 6 − 3 = 3
        ushort[] a = [101, 103, 98, 100, 104, 108],
            b = [100, 100, 100, 100, 100, 100];
        MaskedPair pair = MaskedPair.Measure(a, b, 2);
        Assert.Equal(2, pair.Pixel, 1e-12);
        Assert.Equal(2 * Math.Sqrt(2.0 / 3), pair.PixelUncertainty, 1e-12);
        // variance of the row means 37/3; ½(37/3 − 4/2) = 31/6
        Assert.Equal(31.0 / 6, pair.Row, 1e-12);
        Assert.Equal(37.0 / 6, pair.RowUncertainty, 1e-12);
    }

    [Fact]
    public void NoiseIsFoundWithinItsUncertaintyAndAHitDoesNotCount()
    {
        const int rows = 300,
            columns = 40,
            pairs = 60;
        const double pixel = 6,
            row = 2;
        List<double> pixelZ = [],
            rowZ = [];
        var random = new Random(7);
        for (int i = 0; i < pairs; i++)
        {
            ushort[] a = Frame(random, rows, columns, pixel, row, 1000),
                b = Frame(random, rows, columns, pixel, row, 1003);
            a[77] = 16_000;
            MaskedPair pair = MaskedPair.Measure(a, b, columns);
            pixelZ.Add((pair.Pixel - (pixel * pixel) - (1.0 / 12)) / pair.PixelUncertainty); // codes are rounded
            rowZ.Add((pair.Row - (row * row)) / pair.RowUncertainty);
        }
        foreach (List<double> z in new[] { pixelZ, rowZ })
        {
            // the mean of 60 has a standard error of 0.13, their standard deviation one of 0.09
            Assert.InRange(z.Average(), -0.45, 0.45);
            Assert.InRange(Math.Sqrt(z.Sum(v => v * v) / pairs), 0.7, 1.35);
        }
    }

    private static ushort[] Frame(Random random, int rows, int columns, double pixel, double row, double level)
    {
        var samples = new ushort[rows * columns];
        for (int y = 0; y < rows; y++)
        {
            double shared = row * Normal(random);
            for (int x = 0; x < columns; x++)
                samples[(y * columns) + x] = (ushort)Math.Round(level + shared + (pixel * Normal(random)));
        }
        return samples;
    }

    // Box and Muller: a normal deviate from two uniform ones.
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
