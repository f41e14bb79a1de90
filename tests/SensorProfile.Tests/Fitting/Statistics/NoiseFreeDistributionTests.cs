using SensorProfile.Fitting.Statistics;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>Quantiles behind the noise of a map, against the values before the noise was put on.</summary>
public sealed class NoiseFreeDistributionTests(ITestOutputHelper output)
{
    private const int Pixels = 40_000;

    // Core of 20 % spread (log-normal), 3 % warm pixels by a power law from three times the typical value, a glow that falls
    // by e every 30 of 240 columns. The last column: largest error of a quantile, of the value.
    [Theory]
    [InlineData(0.1, 0.2, 0.00, 0, 0.015)]
    [InlineData(0.2, 0.2, 0.03, 0, 0.015)]
    [InlineData(0.2, 0.2, 0.03, 4, 0.02)]
    [InlineData(0.4, 0.2, 0.00, 0, 0.025)]
    public void QuantilesAreThoseBeforeTheNoise(double noise, double spread, double warm, double glow, double most)
    {
        var random = new NormalNoise(17);
        var uniform = new Random(5);
        double[] truth =
        [
            .. Enumerable
                .Range(0, Pixels)
                .Select(i =>
                    Math.Exp(spread * random.Next())
                    + (uniform.NextDouble() < warm ? 3 * Math.Pow(1 - uniform.NextDouble(), -1 / 1.1) : 0)
                    + glow * Math.Exp(-(i % 240) / 30.0)
                ),
        ];
        float[] seen = [.. truth.Select(t => (float)(t + noise * random.Next()))];
        float[] sorted = [.. seen.Order()];
        var found = NoiseFreeDistribution.Find(
            seen,
            [.. seen.Select(_ => (float)noise)],
            noise,
            sorted[0],
            sorted[(int)(0.99 * Pixels)] + 6 * noise,
            Pixels
        )!;
        double[] ordered = [.. truth.Order()];
        double raw = 0;
        foreach (double share in (double[])[0.5, 0.9, 0.95])
        {
            double right = ordered[(int)(share * (Pixels - 1))],
                told = found.At(share);
            raw = Math.Max(raw, Math.Abs(sorted[(int)(share * (Pixels - 1))] / right - 1));
            output.WriteLine(
                $"{share}: {told:F4}, truth {right:F4}, of the map {sorted[(int)(share * (Pixels - 1))]:F4}"
            );
            Assert.Equal(right, told, most * right);
        }
        Assert.True(raw > most, "the noise changes nothing here");
    }

    /// <summary>
    /// A quarter of the pixels glows, and their noise is three times that of the others. Undone with the noise of
    /// a typical pixel, the upper quantiles stay too high; with each pixel's own they come within 1 %.
    /// </summary>
    [Fact]
    public void BrighterPixelsAreBlurredByTheirOwnNoise()
    {
        var random = new NormalNoise(31);
        double[] truth =
        [
            .. Enumerable.Range(0, Pixels).Select(i => Math.Exp(0.1 * random.Next()) * (i % 4 == 0 ? 2 : 1)),
        ];
        double Noise(double rate) => rate > 1.5 ? 0.36 : 0.12;
        float[] seen = [.. truth.Select(t => (float)(t + Noise(t) * random.Next()))],
            own = [.. truth.Select(t => (float)Noise(t))],
            alike = [.. truth.Select(_ => 0.12f)];
        double right = truth.Order().ElementAt((int)(0.95 * (Pixels - 1)));
        double At95(float[] uncertainties) =>
            NoiseFreeDistribution.Find(seen, uncertainties, 0.12, seen.Min(), seen.Max(), Pixels)!.At(0.95);
        output.WriteLine($"truth {right:F4}, own noise {At95(own):F4}, alike {At95(alike):F4}");
        Assert.Equal(right, At95(own), 0.01 * right);
        Assert.True(At95(alike) > 1.03 * right);
    }

    /// <summary>
    /// The stated scatter is that of the estimate: over 40 maps of the same pixels the error in its units has a root mean square
    /// of 1 within 3 standard errors (1/√80 each).
    /// </summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(0.95)]
    public void TheScatterIsHowFarNoiseMovesTheQuantile(double share)
    {
        var random = new NormalNoise(7);
        const int Few = 10_000;
        double[] truth =
        [
            .. Enumerable.Range(0, Few).Select(i => Math.Exp(0.15 * random.Next()) + (i % 30 == 0 ? 1.5 : 0)),
        ];
        double right = truth.Order().ElementAt((int)(share * (Few - 1)));
        double[] z =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(_ =>
                {
                    float[] seen = [.. truth.Select(t => (float)(t + 0.15 * random.Next()))];
                    var found = NoiseFreeDistribution.Find(
                        seen,
                        [.. seen.Select(_ => 0.15f)],
                        0.15,
                        seen.Min(),
                        seen.Max(),
                        Few
                    )!;
                    return (found.At(share) - right) / found.Scatter(share);
                }),
        ];
        double rms = Math.Sqrt(z.Average(v => v * v));
        output.WriteLine($"{share}: mean z {z.Average():F2}, rms {rms:F2}");
        Assert.InRange(rms, 0.66, 1.34);
    }

    [Fact]
    public void NoNoiseAndNoRangeAreLeftAlone()
    {
        float[] values = [1, 2, 3, float.NaN];
        Assert.Null(NoiseFreeDistribution.Find(values, values, 0, 1, 3, 3));
        Assert.Null(NoiseFreeDistribution.Find(values, values, 0.1, 3, 3, 3));
        Assert.Null(NoiseFreeDistribution.Find(values, values, 1e-6, 1, 3, 3));
    }
}
