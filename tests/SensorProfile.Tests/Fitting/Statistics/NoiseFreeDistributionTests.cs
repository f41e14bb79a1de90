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

    [Fact]
    public void NoNoiseAndNoRangeAreLeftAlone()
    {
        float[] values = [1, 2, 3, float.NaN];
        Assert.Null(NoiseFreeDistribution.Find(values, values, 0, 1, 3, 3));
        Assert.Null(NoiseFreeDistribution.Find(values, values, 0.1, 3, 3, 3));
        Assert.Null(NoiseFreeDistribution.Find(values, values, 1e-6, 1, 3, 3));
    }
}
