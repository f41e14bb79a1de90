using MathNet.Numerics.Distributions;
using SensorProfile.PhotonTransfer;

namespace SensorProfile.Tests.PhotonTransfer;

public sealed class ReadNoiseTests
{
    [Fact]
    public void QuantisationIsRemoved()
    {
        var pooled = new PooledVariance(9.58472 * 9.58472, 0.2, 7, true);
        // The real 14-bit frames: codes 4 ADU apart; σ² − 16/12 gives 9.51491 ADU (reference computed with numpy).
        Assert.Equal(9.51491, ReadNoise.Adu(pooled, codeStep: 4, pixels: 120_000)!.Value, 2e-5);
    }

    [Theory]
    // Derived: variance of a rounded normal variable with σ 0.395811 at mean .0, .25, .5 of a step. All three
    // must agree with σ within the stated doubt.
    [InlineData(0.206959815)]
    [InlineData(0.239788491)]
    [InlineData(0.273045720)]
    public void TheDoubtCoversWhereTheMeanLiesBetweenTwoCodes(double variance)
    {
        Measurement? noise = ReadNoise.Adu(new(variance, 1e-4, 4, true), 1, 1_000_000);
        if (variance < ReadNoise.SmallestVarianceSteps)
            Assert.Null(noise);
        else
            Assert.InRange(Math.Abs(noise!.Value - 0.395811) / noise.StandardUncertainty, 0, 1.6);
    }

    /// <summary>
    /// Rounding moves the observed variance up and down with the mean. At its high end the stated doubt is the root mean
    /// square of that swing, found here by summing the rounded normal distribution at 200 means.
    /// </summary>
    [Theory]
    [InlineData(0.45)]
    [InlineData(0.5)]
    public void TheDoubtOfRoundingIsTheRootMeanSquareOfItsSwing(double sigma)
    {
        double[] variances = [.. Enumerable.Range(0, 200).Select(i => VarianceOfRounded(i / 200.0, sigma))];
        double expected = sigma * sigma + 1.0 / 12,
            swing = Math.Sqrt(variances.Average(v => (v - expected) * (v - expected)));
        Measurement noise = ReadNoise.Adu(new(variances.Max(), 1e-9, 4, true), 1, 1_000_000)!;
        Assert.InRange(noise.StandardUncertainty * 2 * noise.Value / swing, 0.97, 1.03);
    }

    private static double VarianceOfRounded(double mean, double sigma)
    {
        double sum = 0,
            squares = 0;
        for (int code = -10; code <= 11; code++)
        {
            double share = Normal.CDF(mean, sigma, code + 0.5) - Normal.CDF(mean, sigma, code - 0.5);
            (sum, squares) = (sum + share * code, squares + share * code * code);
        }
        return squares - sum * sum;
    }

    [Fact]
    // EMVA 1288: σ² = 0.24 − 1/12
    public void TheLimitIsEmvas() => Assert.Equal(0.3958114029, ReadNoise.UpperLimitAdu(1), 1e-9);

    [Fact]
    public void PairsThatDisagreeWidenTheDoubt()
    {
        PooledVariance calm = PooledVariance.Pool([(4.00, 0.01), (4.01, 0.01), (3.99, 0.01)])!,
            wild = PooledVariance.Pool([(4.0, 0.01), (4.3, 0.01), (3.7, 0.01)])!;
        Assert.Equal(0.01 / Math.Sqrt(3), calm.StandardUncertainty, 1e-12);
        Assert.False(wild.PairsAgree);
        // Scatter 0.3/√3 with two degrees of freedom: t(0.975; 2)/1.96 = 4.3026527299/1.959963985.
        Assert.Equal(0.3 / Math.Sqrt(3) * 4.3026527299 / 1.959963984540054, wild.StandardUncertainty, 1e-6);
    }

    [Fact]
    public void IntervalsHoldTheTruth()
    {
        const double truth = 2.7;
        var random = new Random(7);
        int held = 0;
        const int cameras = 2000;
        for (int c = 0; c < cameras; c++)
        {
            int pairs = 1 + c % 8,
                n = 1024;
            double variance = truth * truth + 1.0 / 12;
            var pooled = PooledVariance.Pool([
                .. Enumerable
                    .Range(0, pairs)
                    .Select(_ =>
                    {
                        double v = variance * Gamma.Sample(random, (n - 1) / 2.0, (n - 1) / 2.0);
                        return (v, v * Math.Sqrt(2.0 / (n - 1)));
                    }),
            ])!;
            Measurement noise = ReadNoise.Adu(pooled, 1, n)!;
            if (Math.Abs(noise.Value - truth) < 1.96 * noise.StandardUncertainty)
                held++;
        }
        // three counting errors around 95 %, and a little for the pairs widened at p < 1 %
        Assert.InRange(100.0 * held / cameras, 93.5, 96.7);
    }
}
