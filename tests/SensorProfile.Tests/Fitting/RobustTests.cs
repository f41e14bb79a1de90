using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting;

/// <summary>Rows, B-8 … B-12, B-16.</summary>
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

    private static readonly double[] TenWithOneWild = [10, 10.1, 9.9, 10.2, 9.8, 10.05, 9.95, 10.15, 9.85, 1000];

    [Fact]
    public void MeanClipOfTenValuesCanRejectNothing()
    {
        SigmaClip clip = SigmaClip.Of(TenWithOneWild, 3, ClipCentre.Mean);
        Assert.Equal(0, clip.Rejected);
        Digits.Relative(109.0, clip.Moments.Mean, 1e-14);
        double z = (1000 - clip.Moments.Mean) / Math.Sqrt(clip.Moments.PopulationVariance);
        Assert.InRange(z, 2.99, 3.0); // the bound is √(n − 1) = 3
        Assert.InRange((1000 - clip.Moments.Mean) / clip.Moments.StandardDeviation, 2.84, 2.84604990);
    }

    [Fact]
    public void MedianClipRejectsTheWildValue()
    {
        SigmaClip clip = SigmaClip.Of(TenWithOneWild, 3);
        Assert.Equal([9], Enumerable.Range(0, 10).Where(i => !clip.Kept[i]));
        Digits.Relative(10.0, clip.Moments.Mean, 1e-14);

        SigmaClip byMad = SigmaClip.Of(TenWithOneWild, 5, ClipCentre.Median, ClipSpread.MadSigma);
        Assert.Equal([9], Enumerable.Range(0, 10).Where(i => !byMad.Kept[i]));
        Digits.Relative(0.18532527731320, OrderStatistics.MadSigma(TenWithOneWild), 1e-12);
    }

    [Fact]
    public void ClipRepeatsUntilNothingIsLeftOut()
    {
        SigmaClip clip = SigmaClip.Of(
            [10.1, 9.8, 10.3, 9.9, 10.0, 10.2, 9.7, 10.1, 10.0, 25.0, 9.9, 10.05, 13.0, 10.15, 9.95],
            3
        );
        Assert.Equal([9, 12], Enumerable.Range(0, 15).Where(i => !clip.Kept[i]));
        Digits.Printed(10.011538461538, clip.Moments.Mean, 5e-13);
        Digits.Printed(0.158300889440, clip.Spread, 5e-13);
    }

    // Quantiles of a normal distribution stand for a very large sample; midpoints of 200 001 equal shares. R-5 holds to
    // the truncation of the grid.
    [Theory]
    [InlineData(1, 0.97333692)]
    [InlineData(2, 0.97033015)]
    [InlineData(3, 0.96997108)]
    [InlineData(50, 0.96992201)]
    public void VarianceLeftByTheThreeSigmaClipOfANormalDistribution(int passes, double variance)
    {
        const int shares = 200_001;
        double[] grid = [.. Enumerable.Range(0, shares).Select(i => Probability.NormalQuantile((i + 0.5) / shares))];
        Digits.Printed(variance, SigmaClip.Of(grid, 3, passes: passes).Moments.PopulationVariance, 1e-4);
    }

    [Fact]
    public void TheilSenLine()
    {
        double[] x = [0, 1, 2, 3, 4, 5, 6, 7],
            y = [1.0, 3.1, 4.9, 7.2, 9.1, 30.0, 13.0, 15.1];
        TheilSen line = TheilSen.Fit(x, y);
        Digits.Printed(2.0196428571429, line.Slope, 5e-14);
        Digits.Printed(1.08125, line.Intercept, 1e-13);
        Digits.Printed(1.95, line.Low, 1e-13);
        Digits.Printed(2.3, line.High, 1e-13);
        StraightLine leastSquares = StraightLine.Fit(x, y);
        Digits.Printed(2.6833333333, leastSquares.Slope, 5e-11);
        Digits.Printed(1.0333333333, leastSquares.Intercept, 5e-11);
    }

    [Fact]
    public void BiweightLocationAndScale()
    {
        double[] values = [2, 4, 4, 4, 5, 5, 7, 9];
        Digits.Printed(4.403800848123, Biweight.Location(values), 5e-13);
        Digits.Printed(1.465278724806, Biweight.Scale(values), 5e-13);
    }

    [Fact]
    public void EqualValuesHaveNoSpreadAndNothingToReject()
    {
        double[] same = [3, 3, 3, 3];
        Assert.Equal((3.0, 0.0, 0), (Biweight.Location(same), Biweight.Scale(same), SigmaClip.Of(same, 3).Rejected));
    }
}
