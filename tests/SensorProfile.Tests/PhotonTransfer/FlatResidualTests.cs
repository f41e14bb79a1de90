using SensorProfile.PhotonTransfer;
using SensorProfile.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.PhotonTransfer;

public class FlatResidualTests(ITestOutputHelper output)
{
    private const int Width = 160,
        Height = 128,
        Frames = 4; // in each half
    private const double Pedestal = 500,
        Signal = 20_000,
        Gain = 0.8; // e-/ADU

    // truth in % of the signal: pixel to pixel, and over areas; the light falls off by 30 %, the halves differ by 3 %
    [Theory]
    [InlineData(0.2, 0.1)]
    [InlineData(0.05, 0.3)]
    [InlineData(0.0, 0.0)]
    public void FindsWhatIsLeftWithItsDoubt(double pixels, double areas)
    {
        const int runs = 150;
        FlatResidual[] found = [.. Enumerable.Range(0, runs).Select(seed => Measure(pixels, areas, 100 + seed))];
        double[] zPixels = [.. found.Select(f => (f.Pixels.Value - pixels) / f.Pixels.StandardUncertainty)],
            squares = [.. found.Select(f => f.Areas.Value * f.Areas.Value)];
        output.WriteLine(
            $"pixels {found.Average(f => f.Pixels.Value):0.####} ± {found.Average(f => f.Pixels.StandardUncertainty):0.####}, "
                + $"areas {Math.Sqrt(squares.Average()):0.####} ± {found.Average(f => f.Areas.StandardUncertainty):0.####}; "
                + $"{zPixels.Count(z => Math.Abs(z) < 1.96)} of {runs} within"
        );
        // 95 % of 150 is 142.5 ± 2.7; where there is nothing, all of it is on one side
        Assert.InRange(zPixels.Count(z => Math.Abs(z) < 1.96), 135, runs);
        if (pixels > 3 * found.Average(f => f.Pixels.StandardUncertainty))
            Assert.Equal(pixels, found.Average(f => f.Pixels.Value), 0.02 * pixels + 0.002);
        // the variance over 20 cells is known to √(2/19) in one run, to 2.6 % in all
        double nothing = areas > 0 ? 0.003 : found.Average(f => f.Areas.StandardUncertainty);
        Assert.Equal(areas, Math.Sqrt(squares.Average()), 0.08 * areas + nothing);
    }

    [Fact]
    public void StuckPixelsAreLeftOut()
    {
        FlatResidual clean = Measure(0.1, 0, 3),
            spoilt = Measure(0.1, 0, 3, (a, b) =>
            {
                for (int i = 0; i < a.Length; i += 997)
                    (a[i], b[i]) = (65_535, 500);
            });
        Assert.Equal(clean.Pixels.Value, spoilt.Pixels.Value, 3 * clean.Pixels.StandardUncertainty);
    }

    [Fact]
    public void EachColourIsMeasuredByItself()
    {
        var mosaic = ColourMosaic.Of("RGGB");
        var (a, b, noise) = Halves(0.2, 0, 8);
        for (int i = 0; i < a.Length; i++)
            if ((i / Width + i % Width) % 2 == 0) // another light for two of the four
                (a[i], b[i]) = (a[i] * 2, b[i] * 2);
        FlatResidual green = FlatResidual.Measure(a, b, Width, mosaic, 1, Pedestal, (noise, noise * 1.03), Frames / 2)!;
        Assert.Equal(0.2, green.Pixels.Value, 4 * green.Pixels.StandardUncertainty);
    }

    [Fact]
    public void WithoutLightOrPixelsThereIsNone()
    {
        float[] dark = [.. Enumerable.Repeat((float)Pedestal, Width * Height)];
        Assert.Null(FlatResidual.Measure(dark, dark, Width, ColourMosaic.Monochrome, 0, Pedestal, (1, 1), 2));
        float[] small = [.. Enumerable.Repeat(20_000f, 40 * 40)];
        Assert.Null(FlatResidual.Measure(small, small, 40, ColourMosaic.Monochrome, 0, Pedestal, (1, 1), 2));
    }

    private static FlatResidual Measure(double pixels, double areas, int seed, Action<float[], float[]>? spoil = null)
    {
        var (a, b, noise) = Halves(pixels, areas, seed);
        spoil?.Invoke(a, b);
        return FlatResidual.Measure(
            a,
            b,
            Width,
            ColourMosaic.Monochrome,
            0,
            Pedestal,
            (noise, noise * 1.03),
            Frames / 2
        )!;
    }

    /// <summary>
    /// Means of two halves of flats: one response with vignetting, photon noise, and in the first half a change of every
    /// pixel and of every cell of 32 px.
    /// </summary>
    private static (float[] A, float[] B, double NoiseOfA) Halves(double pixels, double areas, int seed)
    {
        var random = new Random(seed);
        float[] a = new float[Width * Height],
            b = new float[Width * Height];
        double noise = 0;
        double[] cells = [.. Enumerable.Range(0, Width / 32 * (Height / 32)).Select(_ => areas / 100 * Normal(random))];
        double mean = cells.Average(); // the light of a half is scaled away
        for (int y = 0; y < Height; y++)
        for (int x = 0; x < Width; x++)
        {
            double r2 =
                    (Math.Pow(x - Width / 2.0, 2) + Math.Pow(y - Height / 2.0, 2))
                    / (Math.Pow(Width / 2.0, 2) + Math.Pow(Height / 2.0, 2)),
                level = Signal * (1 - 0.3 * r2) * (1 + 0.006 * Normal(random)),
                variance = level / Gain / Frames;
            noise += variance;
            int i = y * Width + x;
            // the change is a share of the mean signal, as the measurement states it
            double change =
                (pixels / 100 * Normal(random) + cells[y / 32 * (Width / 32) + x / 32] - mean) * Signal * 0.9;
            a[i] = (float)(Pedestal + level + change + Math.Sqrt(variance) * Normal(random));
            b[i] = (float)(Pedestal + 1.03 * level + Math.Sqrt(1.03 * variance) * Normal(random));
        }
        return (a, b, noise / a.Length);
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
