using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public class IntegerHistogramTests
{
    // numpy.percentile, linear interpolation, as run with numpy 1.24.2
    [Theory]
    [
        InlineData(new[] { 1, 2, 3, 4, 10 }, 0.10, 1.4),
        InlineData(new[] { 1, 2, 3, 4, 10 }, 0.50, 3),
        InlineData(new[] { 1, 2, 3, 4, 10 }, 0.90, 7.6),
        InlineData(new[] { 1, 2, 3, 4, 10 }, 0.99, 9.76)
    ]
    [
        InlineData(new[] { 3, 1, 2, 9, 7, 5, 4 }, 0.25, 2.5),
        InlineData(new[] { 3, 1, 2, 9, 7, 5, 4 }, 0.50, 4),
        InlineData(new[] { 3, 1, 2, 9, 7, 5, 4 }, 0.75, 6),
        InlineData(new[] { 3, 1, 2, 9, 7, 5, 4 }, 0.999, 8.988)
    ]
    public void QuantilesInterpolateLinearly(int[] sample, double p, double expected) =>
        Assert.Equal(expected, IntegerHistogram.Tally(sample).Quantile(p), 1e-12);

    // scipy.stats.median_abs_deviation; the third sample in units of 0.01
    [Theory]
    [
        InlineData(new[] { 1, 2, 3, 4, 100 }, 1),
        InlineData(new[] { 2, 4, 4, 4, 5, 5, 7, 9 }, 0.5),
        InlineData(new[] { 10, 20, -30, 5, 500, -15 }, 17.5)
    ]
    public void MedianAbsoluteDeviationIsExact(int[] sample, double expected) =>
        Assert.Equal(expected, IntegerHistogram.Tally(sample).MedianAbsoluteDeviation);

    [Fact] // bins that hold nothing lie around and between: none of them is a value of the sample
    public void EmptyBinsAreNoValues()
    {
        var codes = new IntegerHistogram(10, [0, 0, 1, 0, 0, 2, 0, 0, 0]);
        Assert.Equal((12, 15), (codes.Minimum, codes.Maximum));
        Assert.Equal(15, codes.Median);
        Assert.Equal(13.5, codes.Quantile(0.25)); // half-way from 12 to 15
    }

    [Fact]
    // numpy.var, ddof 0
    public void VarianceHasDivisorN() => Assert.Equal(4.0, IntegerHistogram.Tally([2, 4, 4, 4, 5, 5, 7, 9]).Variance);

    [Fact]
    public void EverythingAgreesWithTheSortedSample()
    {
        var random = new Random(3);
        for (int n = 1; n <= 120; n++)
        {
            int[] sample = [.. Enumerable.Range(0, n).Select(_ => random.Next(-9, 10) * random.Next(1, 40)).Order()];
            var histogram = IntegerHistogram.Tally(sample);
            double median = (sample[(n - 1) / 2] + sample[n / 2]) / 2.0;
            double[] distances = [.. sample.Select(x => Math.Abs(x - median)).Order()];
            Assert.Equal((sample[0], sample[^1], median), (histogram.Minimum, histogram.Maximum, histogram.Median));
            Assert.Equal((distances[(n - 1) / 2] + distances[n / 2]) / 2, histogram.MedianAbsoluteDeviation);
            Assert.Equal(sample.Sum(x => (long)x), (long)histogram.Sum);
            Assert.Equal(sample.Sum(x => (long)x * x), (long)histogram.SumOfSquares);
            Assert.Equal(sample.Count(x => x is >= -7 and <= 20), histogram.CountBetween(-7, 20));
        }
    }

    [Fact]
    public void SumsBeyond64BitsAreExact()
    {
        var histogram = new IntegerHistogram(65534, [3_000_000_000_000, 3_000_000_000_000]);
        Assert.Equal((Int128)3_000_000_000_000 * (65534L * 65534 + 65535L * 65535), histogram.SumOfSquares);
        Assert.Equal(0.25, histogram.Variance);
    }

    [Fact]
    public void MergedHistogramsCountTogether()
    {
        var merged = IntegerHistogram.Merge([IntegerHistogram.Tally([1, 2, 2]), IntegerHistogram.Tally([-4, 2])]);
        Assert.Equal((5, 3, 1), ((int)merged.Count, (int)merged[2], (int)merged[-4]));
    }
}
