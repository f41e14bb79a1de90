using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;

namespace SensorProfile.Tests.Pixels.Pairs;

public class PairVarianceTests
{
    private static readonly int[] A = [100, 104, 98, 101, 97, 103];
    private static readonly int[] B = [101, 103, 100, 99, 98, 102];

    /// <summary>The worked pair: ½⟨d²⟩ − ½⟨d⟩² = 1 exactly, 1.2 with divisor n − 1.</summary>
    [Theory, InlineData(0, 0), InlineData(0, 75), InlineData(500, 0), InlineData(40000, 40000)]
    public void TheWorkedPairHasVarianceOneWhateverIsAddedToEitherFrame(int toA, int toB)
    {
        var channel = Pair(A.Select(x => x + toA), B.Select(x => x + toB));
        Assert.Equal(1.0, Standard(channel), 1e-15);
        Assert.Equal(1.2, channel.TemporalVariance.Value, 1e-15);
    }

    [Fact]
    public void SwappingTheFramesOrMovingPixelsChangesNothing()
    {
        int[] order = [3, 1, 5, 0, 2, 4];
        Assert.Equal(Pair(A, B).TemporalVariance, Pair(B, A).TemporalVariance);
        Assert.Equal(
            Pair(A, B).TemporalVariance,
            Pair(order.Select(i => A[i]), order.Select(i => B[i])).TemporalVariance
        );
    }

    [Theory, InlineData(1), InlineData(4), InlineData(9)]
    public void MultiplyingBySomePowerOfTwoMultipliesTheVarianceByItsSquareBitForBit(int power)
    {
        var (plain, scaled) = (Pair(A, B), Pair(A.Select(x => x << power), B.Select(x => x << power)));
        Assert.Equal(plain.TemporalVariance.Value * Math.Pow(4, power), scaled.TemporalVariance.Value);
    }

    [Fact]
    public void APatternInBothFramesCancelsAndInOneAddsHalfItsVariance()
    {
        // d takes −1, 1, −2, 2, −1, 1: a pattern of ±3 that does not correlate with it has population variance 9.
        int[] pattern = [3, 3, 3, 3, -3, -3],
            balanced = [3, -3, 3, 3, -3, -3];
        Assert.Equal(
            1.0,
            Standard(Pair(A.Select((x, i) => x + pattern[i]), B.Select((x, i) => x + pattern[i]))),
            1e-15
        );
        double correlation = balanced.Zip(A.Zip(B, (a, b) => a - b), (p, d) => p * d).Sum();
        Assert.Equal(
            1.0 + (9 + 2 * correlation / 6) / 2,
            Standard(Pair(A.Select((x, i) => x + balanced[i]), B)),
            1e-12
        );
    }

    // Relative standard errors: normal noise, n = 1e4 and 1e6; Poisson electrons at μ = 100 and 1, n = 1e4
    [
        Theory,
        InlineData(10000, 0, 0.0141428428),
        InlineData(1000000, 0, 0.00141421427),
        InlineData(10000, 1 / 200.0, 0.0141605085),
        InlineData(10000, 1 / 2.0, 0.0158120208)
    ]
    public void RelativeStandardErrors(long pixels, double kurtosis, double expected) =>
        Assert.Equal(expected, PairVariance.RelativeStandardError(pixels, kurtosis), 1e-10);

    [Theory, InlineData(0), InlineData(0.7)]
    public void TheStandardErrorIsThatOfManySimulatedPairs(double electrons)
    {
        // 300 pairs of 60 × 50 pixels; read noise 6 ADU, and single electrons of 30 ADU for a kurtosis that matters.
        double truth = 36 + 900 * electrons + 1 / 12.0;
        double[] z =
        [
            .. Enumerable
                .Range(0, 300)
                .Select(seed =>
                {
                    var noise = new NormalNoise(seed);
                    double Pixel(int row, int column) => 500 + noise.Next(6) + 30 * noise.Poisson(electrons);
                    var variance = PairStatistics
                        .Measure(
                            MemorySamples.Of("a", 60, 50, Pixel),
                            MemorySamples.Of("b", 60, 50, Pixel),
                            ColourMosaic.Monochrome
                        )
                        .Channels[0]
                        .TemporalVariance;
                    return (variance.Value - truth) / variance.StandardUncertainty;
                }),
        ];
        // 4 standard errors of a mean of 300, and the clip's small loss
        Assert.InRange(z.Average(), -0.25, 0.25);
        Assert.InRange(z.Average(v => v * v), 0.7, 1.35); // variance of z: 1 ± 4·√(2/300)
    }

    [Theory]
    [
        InlineData(0.395811, 0.0, 0.206959815),
        InlineData(0.395811, 0.25, 0.239788491),
        InlineData(0.395811, 0.5, 0.273045720)
    ]
    [InlineData(0.2, 0.5, 0.2500012), InlineData(1.0, 0.3, 1.0833333)]
    public void BelowOneCodeTheVarianceDependsOnWhereTheMeanLies(double sigma, double mean, double expected)
    {
        var (a, b) = (new NormalNoise(11), new NormalNoise(12));
        // 490 000 pixels: relative error √((2 + κ)/n) ≈ 0.25 %
        const int Side = 700;
        var pair = PairStatistics.Measure(
            MemorySamples.Of("a", Side, Side, (_, _) => 100 + mean + a.Next(sigma)),
            MemorySamples.Of("b", Side, Side, (_, _) => 100 + mean + b.Next(sigma)),
            ColourMosaic.Monochrome
        );
        Assert.Equal(expected, Standard(pair.Channels[0]), 0.01 * expected);
    }

    // The form of the standard, divisor n; the program gives n − 1.
    private static double Standard(PairChannel channel) =>
        channel.TemporalVariance.Value * (channel.Differences.Count - 1) / channel.Differences.Count;

    private static PairChannel Pair(IEnumerable<int> a, IEnumerable<int> b) =>
        PairStatistics
            .Measure(
                new MemorySamples("a", 3, 2, [.. a.Select(x => (ushort)x)]),
                new MemorySamples("b", 3, 2, [.. b.Select(x => (ushort)x)]),
                ColourMosaic.Monochrome,
                clip: 5
            )
            .Channels[0];
}
