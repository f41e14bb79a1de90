using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Tests.Randomness;

public class ZigguratTests
{
    private const int Draws = 4_000_000;

    /// <summary>
    /// Standard errors for a normal sample: mean 1/√N, second moment √(2/N), third √(6/N) (about the sample's own
    /// mean), fourth √(96/N).
    /// </summary>
    [Fact]
    public void NormalHasTheMomentsOfTheNormal()
    {
        SampleMoments found = SampleMoments.Of(Normal());
        double root = Math.Sqrt(Draws);
        Assert.InRange(found.Mean * root, -4, 4);
        Assert.InRange((found.Second - 1) * root / Math.Sqrt(2), -4, 4);
        Assert.InRange(found.Third * root / Math.Sqrt(6), -4, 4);
        Assert.InRange((found.Fourth - 3) * root / Math.Sqrt(96), -4, 4);
    }

    /// <summary>
    /// Cells of width 0.1 from −4 to 4 and the two tails. Probabilities from Φ by Simpson's rule on the density, far
    /// below the counting error.
    /// </summary>
    [Fact]
    public void NormalFillsItsCellsAndTails()
    {
        long[] counts = new long[82];
        foreach (double x in Normal())
        {
            counts[(int)Math.Clamp(Math.Floor(x * 10) + 41, 0, 81)]++;
        }
        double[] expected = new double[82];
        for (int i = 1; i <= 80; i++)
        {
            double a = (i - 41) / 10.0;
            expected[i] = Draws * (Density(a) + 4 * Density(a + 0.05) + Density(a + 0.1)) * 0.1 / 6;
        }
        expected[0] = expected[81] = Draws * 3.167124183311992e-5; // 1 − Φ(4)
        Assert.InRange(ChiSquare.Deviate(expected, counts), -4, 4);
    }

    /// <summary>
    /// Central moments 1, 2, 9 and variances of their sample forms 8/N (m₂: μ₄ − μ₂² = 8) for the exponential; third:
    /// (μ₆ − μ₃² − 6μ₄μ₂ + 9)/N with μ₆ = 265.
    /// </summary>
    [Fact]
    public void ExponentialHasTheMomentsOfTheExponential()
    {
        SampleMoments found = SampleMoments.Of(Exponential());
        double root = Math.Sqrt(Draws);
        Assert.InRange((found.Mean - 1) * root, -4, 4);
        Assert.InRange((found.Second - 1) * root / Math.Sqrt(8), -4, 4);
        Assert.InRange((found.Third - 2) * root / Math.Sqrt(265 - 4 - 54 + 9), -4, 4);
    }

    /// <summary>Equal cells of u = 1 − exp(−x), finer at both ends by construction.</summary>
    [Fact]
    public void ExponentialFillsItsCells()
    {
        long[] counts = new long[200];
        foreach (double x in Exponential())
        {
            counts[(int)Math.Min(199, 200 * (1 - Math.Exp(-x)))]++;
        }
        Assert.InRange(ChiSquare.Deviate([.. Enumerable.Repeat(Draws / 200.0, 200)], counts), -4, 4);
    }

    /// <summary>
    /// P(x > 10) = e⁻¹⁰: 181.6 of 4 million, Poisson error 13.5; the base layer ends at 7.7, so this is its tail.
    /// </summary>
    [Fact]
    public void ExponentialHasItsTail() => Assert.InRange(Exponential().Count(x => x > 10), 128, 236);

    private static double Density(double x) => Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);

    private static double[] Normal()
    {
        var random = RandomStream.For(11, Purpose.Row);
        double[] sample = new double[Draws];
        for (int i = 0; i < Draws; i++)
        {
            sample[i] = random.NextNormal();
        }
        return sample;
    }

    private static double[] Exponential()
    {
        var random = RandomStream.For(12, Purpose.Row);
        double[] sample = new double[Draws];
        for (int i = 0; i < Draws; i++)
        {
            sample[i] = random.NextExponential();
        }
        return sample;
    }
}
