using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>
/// Quantiles and the median absolute deviation against scipy 1.10.1 and numpy 1.24.2.
/// </summary>
public class RobustTests
{
    [Fact]
    public void Constants()
    {
        Digits.Relative(1 / Probability.NormalQuantile(0.75), OrderStatistics.MadToSigma, 1e-15);
        Digits.Relative(0.5 / Probability.NormalQuantile(0.75), OrderStatistics.InterquartileToSigma, 1e-15);
        Digits.Relative(Math.PI / 2, OrderStatistics.MedianToMeanError * OrderStatistics.MedianToMeanError, 1e-15);
    }

    [Theory]
    [InlineData(new double[] { 1, 2, 3, 4, 100 }, 1, 1.482602218505602)]
    [InlineData(new double[] { 2, 4, 4, 4, 5, 5, 7, 9 }, 0.5, 0.741301109252801)]
    [InlineData(new[] { .1, .2, -.3, .05, 5, -.15 }, 0.175, 0.25945538823848)]
    public void MedianAbsoluteDeviation(double[] values, double raw, double sigma)
    {
        Digits.Relative(raw, OrderStatistics.MedianAbsoluteDeviation(values), 1e-14);
        Digits.Relative(sigma, OrderStatistics.MadSigma(values), 1e-13);
    }

    [Fact]
    public void Quantiles()
    {
        double[] a = [1, 2, 3, 4, 10],
            b = [3, 1, 2, 9, 7, 5, 4];
        Assert.Equal(
            [1.4, 3, 7.6, 9.76],
            new[] { .1, .5, .9, .99 }.Select(p => Math.Round(OrderStatistics.Quantile(a, p), 12))
        );
        Assert.Equal(
            [2.5, 4, 6, 8.988],
            new[] { .25, .5, .75, .999 }.Select(p => Math.Round(OrderStatistics.Quantile(b, p), 12))
        );
        Assert.Equal([3.0, 1, 2, 9, 7, 5, 4], b);
        Assert.Equal(10, OrderStatistics.Quantile(a, 1));
    }
}
