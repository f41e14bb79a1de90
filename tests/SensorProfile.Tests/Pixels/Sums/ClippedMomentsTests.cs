using MathNet.Numerics.Distributions;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public class ClippedMomentsTests
{
    [Fact]
    public void MedianAbsoluteDeviationToSigma() =>
        Assert.Equal(OrderStatistics.MadToSigma, 1 / Normal.InvCDF(0, 1, 0.75), 1e-12);

    // Passes 1, 2, 3 and the fixed point of a 3 σ clip of a normal sample, computed at 40 digits
    [
        Theory,
        InlineData(1, 0.97333692),
        InlineData(2, 0.97033015),
        InlineData(3, 0.96997108),
        InlineData(100, 0.96992201)
    ]
    public void AnIteratedClipOfANormalSampleConverges(int passes, double expected)
    {
        var clipped = ClippedMoments.Measure(NormalSample(10000), limit: 3, mostPasses: passes);
        // limits fall on whole codes of 1e-4 σ: 6·φ(3)·1e-4·9 ≈ 2e-5
        Assert.Equal(expected, clipped.Variance / 1e8, 2e-5);
    }

    [Fact]
    public void AFiveSigmaClipOfAMillionNormalPixelsLosesHalfAPixel()
    {
        var clipped = ClippedMoments.Measure(NormalSample(1000));
        Assert.Equal(5.733e-7, (double)clipped.Excluded / (clipped.Count + clipped.Excluded), 1e-8);
        Assert.Equal(1 - 1.487e-5, clipped.Variance / (1e6 + 1 / 12.0), 1e-6); // codes of 1 add 1/12
        Assert.Equal(0, clipped.ExcessKurtosis, 1e-3);
    }

    // astropy.stats.sigma_clip with median and mad_std / median and std; in units of 0.01
    [Theory]
    [InlineData(5, new[] { 1000, 1010, 990, 1020, 980, 1005, 995, 1015, 985, 100000 }, 9, 1000.0)]
    [InlineData(
        3,
        new[] { 1010, 980, 1030, 990, 1000, 1020, 970, 1010, 1000, 2500, 990, 1005, 1300, 1015, 995 },
        13,
        1001.1538461538
    )]
    public void OutliersOfASmallSampleAreLeftOut(double limit, int[] sample, int kept, double mean)
    {
        var clipped = ClippedMoments.Measure(IntegerHistogram.Tally(sample), limit);
        Assert.Equal(kept, clipped.Count);
        Assert.Equal(mean, clipped.Mean, 1e-9);
        Assert.Equal(sample.Length - kept, clipped.Excluded);
    }

    [Theory, InlineData(1), InlineData(16)]
    public void CoarseCodesDoNotMisleadTheFirstLimits(int step)
    {
        // σ of 0.4 steps: most differences are 0, so the MAD is 0; nothing must be lost.
        var sample = Enumerable
            .Repeat(0, 8000)
            .Concat(Enumerable.Repeat(step, 1000))
            .Concat(Enumerable.Repeat(-step, 1000));
        var clipped = ClippedMoments.Measure(IntegerHistogram.Tally(sample));
        Assert.Equal((10000, 0), (clipped.Count, clipped.Excluded));
        Assert.Equal(0.2 * step * step, clipped.Variance, 1e-12);
    }

    [Fact]
    public void EqualSamplesHaveNoVariance()
    {
        var clipped = ClippedMoments.Measure(IntegerHistogram.Tally([7, 7, 7]));
        Assert.Equal((3, 0.0, 0.0), (clipped.Count, clipped.Variance, clipped.ExcessKurtosis));
    }

    private static IntegerHistogram NormalSample(int sigma)
    {
        // so large that counts need not be rounded away in the tails
        const double Total = 1e12;
        var counts = new long[14 * sigma + 1];
        for (int i = 0; i < counts.Length; i++)
        {
            double low = (i - 7.0 * sigma - 0.5) / sigma;
            counts[i] = (long)(
                Total
                * (
                    low > 0
                        ? Normal.CDF(0, 1, -low) - Normal.CDF(0, 1, -low - 1.0 / sigma)
                        : Normal.CDF(0, 1, low + 1.0 / sigma) - Normal.CDF(0, 1, low)
                )
            );
        }
        return new IntegerHistogram(-7 * sigma, counts);
    }
}
