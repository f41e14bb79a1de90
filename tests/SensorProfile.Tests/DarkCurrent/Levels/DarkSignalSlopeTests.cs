using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent.Levels;

/// <summary>
/// The mean and variance forms of EMVA 1288, numpy.polyfit (weights 1/u, degrees 1 and 2), and the behaviour of the
/// pedestal's jitter by simulation.
/// </summary>
public class DarkSignalSlopeTests
{
    private static readonly double[] X = [1, 10, 30, 60, 120, 300],
        Y = [100.21, 101.05, 102.98, 106.10, 111.90, 130.05],
        U = [.05, .05, .06, .08, .10, .15];

    [Fact]
    public void LevelAndVarianceGiveTheSameCurrent()
    {
        double[] t = [0, 10, 60, 300],
            level = [200, 201, 206, 230],
            variance = [2.25, 2.75, 5.25, 17.25];
        DarkSignalFit byLevel = DarkSignalSlope.Fit([.. t.Zip(level, (a, b) => (a, b, 0.1))])!;
        DarkSignalFit byVariance = DarkSignalSlope.Fit(
            [.. t.Zip(variance, (a, b) => (a, b, 0.05))],
            "ADU²",
            pedestalJitters: false
        )!;
        Digits.Relative(0.1, byLevel.Slope.Value, 1e-12);
        Digits.Relative(0.05, byVariance.Slope.Value, 1e-12);
        Digits.Relative(0.5, byVariance.Slope.Value / byLevel.Slope.Value, 1e-12); // the ratio is K
        Digits.Relative(200, byLevel.Intercept.Value, 1e-12);
        Digits.Relative(2.25, byVariance.Intercept.Value, 1e-11);
        Assert.Equal(("ADU/s", "ADU²/s", 0.0), (byLevel.Slope.Unit, byVariance.Slope.Unit, byLevel.PedestalJitter));
        Assert.True(byLevel.Linear && byLevel.Resolved);
    }

    [Fact]
    public void LineAndCurvatureAgreeWithALibrary()
    {
        DarkSignalFit fit = DarkSignalSlope.Fit([.. X.Select((x, i) => (x, Y[i], U[i]))], pedestalJitters: false)!;
        Digits.Relative(0.09961374523187, fit.Slope.Value, 1e-12);
        Digits.Relative(100.0613840709, fit.Intercept.Value, 1e-12);
        Digits.Relative(Math.Sqrt(2.145857421e-7), fit.Slope.StandardUncertainty, 1e-7);
        Digits.Relative(Math.Sqrt(9.796110465e-4), fit.Intercept.StandardUncertainty, 1e-7);
        Digits.Printed(4.741451526, fit.ChiSquared, 5e-10);
        Digits.Printed(5.8108088059e-6, fit.Curvature!.Value, 5e-16);
        Digits.Printed(4.6447367000e-6, fit.Curvature.StandardUncertainty, 5e-15);
        Assert.InRange(fit.CurvatureProbability, 0.20, 0.22); // 1.25 u
        Assert.True(fit.Linear);
    }

    [Fact]
    public void ACurvedSignalIsNotLinear()
    {
        DarkSignalFit fit = DarkSignalSlope.Fit(
            [.. X.Select(x => (x, 100 + 0.1 * x - 3e-5 * x * x, 0.02))],
            pedestalJitters: false
        )!;
        Assert.False(fit.Linear);
        Digits.Relative(-3e-5, fit.Curvature!.Value, 1e-9);
        Digits.Relative(3e-5 * 299 * 299 / 4 / (fit.Slope.Value * 299), fit.CurvatureShare, 1e-9);
    }

    [Fact]
    public void APinnedLevelIsSeenToFallAndGetsALimit()
    {
        DarkSignalFit fit = DarkSignalSlope.Fit([.. X.Select(x => (x, 100 - 0.002 * x, 0.05))])!;
        Assert.True(fit.Slope.Value < -1.6448536 * fit.Slope.StandardUncertainty);
        Assert.False(fit.Resolved);
        Digits.Relative(1.6448536 * fit.Slope.StandardUncertainty, fit.UpperLimit, 1e-7);
    }

    [Fact]
    public void OneExposureMakesNoLine() => Assert.Null(DarkSignalSlope.Fit([(60, 100, 0.1), (60, 101, 0.1)]));

    [Fact]
    public void TwoExposuresMakeALineThatNothingTests()
    {
        DarkSignalFit fit = DarkSignalSlope.Fit([(60, 100, 0.1), (300, 112, 0.1)])!;
        Digits.Relative(0.05, fit.Slope.Value, 1e-12);
        Assert.Equal((0, null, 1.0), (fit.DegreesOfFreedom, fit.Curvature, fit.CurvatureProbability));
    }

    // 2000 simulated series. A mean of |z| < 1.96 flags has a standard error of √(0.95·0.05/2000) = 0.5 %: 93 … 98 %
    // allows 4 of them around 95, and the slight
    // conservatism of a jitter that cannot be negative. Bias limit: 4 standard errors of a mean of z, whose spread is
    // at most 1.
    [Theory]
    [InlineData(0.0, 3)]
    [InlineData(0.3, 3)]
    [InlineData(0.3, 1)]
    [InlineData(0.02, 2)]
    public void IntervalsHoldTheTruthWithAndWithoutJitter(double jitter, int framesPerExposure)
    {
        const int series = 2000;
        const double slope = 0.01,
            error = 0.02;
        var random = new Xoshiro256StarStar(20 + framesPerExposure, false);
        double sum = 0;
        int inside = 0,
            falselyCurved = 0;
        for (int s = 0; s < series; s++)
        {
            var points = new List<(double, double, double)>();
            foreach (double t in X)
                for (int f = 0; f < framesPerExposure; f++)
                    points.Add(
                        (
                            t,
                            100
                                + slope * t
                                + error * Normal.Sample(random, 0, 1)
                                + jitter * Normal.Sample(random, 0, 1),
                            error
                        )
                    );
            DarkSignalFit fit = DarkSignalSlope.Fit(points)!;
            double z = (fit.Slope.Value - slope) / fit.Slope.StandardUncertainty;
            sum += z;
            if (Math.Abs(z) < 1.96)
                inside++;
            if (fit.CurvatureProbability < 0.01)
                falselyCurved++;
        }
        Assert.InRange(inside / (double)series, 0.93, 0.985);
        Assert.InRange(sum / series, -0.09, 0.09);
        // 1 % asked for, 2 % = 4.5 standard errors above
        Assert.InRange(falselyCurved / (double)series, 0, 0.02);
    }

    // 2000 series of 10 frames at each of 6 exposures, whose sets share an offset of 0.3 each: frames that share their
    // set's offset are not independent. Limits as above, with the
    // widening for 4 degrees of freedom (t₀.₉₇₅(4)/1.96 = 1.42) behind them; taken as independent, the intervals hold
    // 48 % only.
    [Fact]
    public void IntervalsHoldTheTruthWhereWholeSetsAreOffset()
    {
        const int series = 2000;
        var random = new Xoshiro256StarStar(31, false);
        int inside = 0;
        double sum = 0;
        for (int s = 0; s < series; s++)
        {
            var points = new List<(double, double, double)>();
            foreach (double t in X)
            {
                double offset = 0.3 * Normal.Sample(random, 0, 1);
                for (int f = 0; f < 10; f++)
                    points.Add((t, 100 + 0.01 * t + offset + 0.05 * Normal.Sample(random, 0, 1), 0.02));
            }
            Measurement slope = DarkSignalSlope.Fit(points)!.Slope;
            double z = (slope.Value - 0.01) / slope.StandardUncertainty;
            sum += z;
            if (Math.Abs(z) < 1.96)
                inside++;
        }
        Assert.InRange(inside / (double)series, 0.93, 0.985);
        Assert.InRange(sum / series, -0.09, 0.09);
    }
}
