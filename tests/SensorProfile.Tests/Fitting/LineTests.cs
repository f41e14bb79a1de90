using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting;

/// <summary>
/// Lines of the GUM (H.3), of ISO/TS 28037:2010, of Pearson's data, and of numpy and scipy.
/// </summary>
public class LineTests
{
    private static readonly double[] OneToSix = [1, 2, 3, 4, 5, 6];

    [Fact]
    public void ThermometerOfTheGum()
    {
        double[] t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
        double[] b = [-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160];
        StraightLine line = StraightLine.Fit([.. t.Select(v => v - 20)], b).Scaled();
        Digits.Printed(-0.17120379013, line.Intercept, 5e-12);
        Digits.Printed(0.00287759784, line.InterceptUncertainty, 5e-12);
        Digits.Printed(0.00218269774, line.Slope, 5e-12);
        Digits.Printed(0.00066793877, line.SlopeUncertainty, 5e-12);
        Digits.Relative(-1.78834075e-6, line.Covariance, 3e-9);
        Digits.Printed(-0.93042960, line.Covariance / (line.InterceptUncertainty * line.SlopeUncertainty), 5e-9);
        Digits.Printed(0.00349756396, Math.Sqrt(line.ReducedChiSquared), 5e-12);
        (double value, double uncertainty) = line.At(10);
        Digits.Printed(-0.14937681273, value, 5e-12);
        Digits.Printed(0.00413859575, uncertainty, 5e-12);
    }

    [Fact]
    public void WeightedLineWithEqualUncertainties()
    {
        StraightLine line = StraightLine.Fit(OneToSix, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], [.5, .5, .5, .5, .5, .5]);
        Check(line, 1.86666666667, 0.465474668126, 1.75714285714, 0.119522860933, -0.05, 1.66476190476);
    }

    [Fact]
    public void WeightedLineWithUnequalUncertainties()
    {
        StraightLine line = StraightLine.Fit(OneToSix, [3.2, 4.3, 7.6, 8.6, 11.7, 12.8], [.5, .5, .5, 1, 1, 1]);
        Check(line, 0.885232067511, 0.529708143509, 2.05696202532, 0.177892016741, -0.0822784810127, 4.13080168776);
    }

    [Fact]
    public void LineWithUnknownScale()
    {
        StraightLine line = StraightLine.Fit(OneToSix, [3.014, 5.225, 7.004, 9.061, 11.201, 12.762]);
        Digits.Printed(0.116498285714, line.ChiSquared, 5e-13);
        Check(line.Scaled(), 1.172, 0.158875093196, 1.96357142857, 0.0407953578792, -0.00582491428571, 0.116498285714);
    }

    [Fact]
    public void PearsonsDataWithYorksWeightsOfY()
    {
        double[] x = [0, .9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4],
            y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
        double[] uy = Uncertainties(1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500);
        StraightLine yOnly = StraightLine.Fit(x, y, uy),
            unweighted = StraightLine.Fit(x, y);
        Digits.Printed(6.10010931667, yOnly.Intercept, 5e-12);
        Digits.Printed(-0.61081295658, yOnly.Slope, 5e-12);
        Digits.Printed(5.76118519044, unweighted.Intercept, 5e-12);
        Digits.Printed(-0.53957727498, unweighted.Slope, 5e-12);
    }

    [Fact]
    public void WeightedMeanOfThree()
    {
        WeightedMean mean = WeightedMean.Combine([10, 12, 20], [1, 0.5, 2]);
        Digits.Relative(12, mean.Value, 1e-15);
        Digits.Printed(0.43643578047, mean.Uncertainty, 5e-12);
        Digits.Relative(20, mean.ChiSquared, 1e-14);
        Digits.Relative(mean.Uncertainty * Math.Sqrt(10), mean.BirgeUncertainty, 1e-14);
    }

    private static readonly double[] Exposures = [1, 10, 30, 60, 120, 300],
        Levels = [100.21, 101.05, 102.98, 106.10, 111.90, 130.05],
        Errors = [.05, .05, .06, .08, .10, .15];

    [Fact]
    public void WeightedPolynomialsAgreeWithALibrary()
    {
        LinearFit line = Polynomial.Fit(Exposures, Levels, Errors, 1);
        Digits.Relative(0.09961374523187, line.Parameters[1], 1e-12);
        Digits.Relative(100.0613840709, line.Parameters[0], 1e-12);
        Digits.Relative(2.145857421e-7, line.Covariance[1, 1], 1e-7);
        Digits.Relative(-7.385208844e-6, line.Covariance[0, 1], 1e-7);
        Digits.Relative(9.796110465e-4, line.Covariance[0, 0], 1e-7);
        Digits.Printed(4.741451526, line.ChiSquared, 5e-10);
        Digits.Relative(2.543619736e-7, line.ReducedChiSquared * line.Covariance[1, 1], 1e-7);
        Digits.Relative(1.161194573e-3, line.ReducedChiSquared * line.Covariance[0, 0], 1e-7);

        LinearFit parabola = Polynomial.Fit(Exposures, Levels, Errors, 2);
        Digits.Printed(5.8108088059e-6, parabola.Parameters[2], 5e-16);
        Digits.Printed(4.6447367000e-6, parabola.Uncertainty(2), 5e-15);
        Digits.Printed(0.0981200971199, parabola.Parameters[1], 5e-13);
        Digits.Printed(100.086262568, parabola.Parameters[0], 5e-10);
        Digits.Printed(3.176319521, parabola.ChiSquared, 5e-10);
        Digits.Relative(
            Polynomial.At(parabola.Parameters, 60),
            parabola.Parameters[0] + 60 * (parabola.Parameters[1] + 60 * parabola.Parameters[2]),
            1e-15
        );
    }

    [Fact]
    public void UnweightedRegressionAgreesWithALibrary()
    {
        StraightLine line = StraightLine.Fit([1, 2, 3, 4], [2.1, 3.9, 6.2, 7.8]).Scaled();
        Digits.Relative(1.94, line.Slope, 1e-14);
        Digits.Printed(0.15, line.Intercept, 1e-13);
        Digits.Printed(0.0905538514, line.SlopeUncertainty, 5e-11);
        Digits.Printed(0.2479919354, line.InterceptUncertainty, 5e-11);
    }

    [Fact]
    public void ScalingAllUncertainties()
    {
        LinearFit one = Polynomial.Fit(Exposures, Levels, Errors, 1),
            three = Polynomial.Fit(Exposures, Levels, [.. Errors.Select(e => 3 * e)], 1);
        for (int i = 0; i < 2; i++)
        {
            Digits.Relative(one.Parameters[i], three.Parameters[i], 1e-12);
            Digits.Relative(9 * one.Covariance[i, i], three.Covariance[i, i], 1e-12);
            Digits.Relative(
                one.ReducedChiSquared * one.Covariance[i, i],
                three.ReducedChiSquared * three.Covariance[i, i],
                1e-11
            );
        }
        Digits.Relative(one.ChiSquared / 9, three.ChiSquared, 1e-11);
    }

    [Fact]
    public void DoublingThePointsHalvesTheCovariance()
    {
        StraightLine one = StraightLine.Fit(Exposures, Levels, Errors),
            two = StraightLine.Fit([.. Exposures, .. Exposures], [.. Levels, .. Levels], [.. Errors, .. Errors]);
        Digits.Relative(one.Slope, two.Slope, 1e-12);
        Digits.Relative(one.SlopeVariance / 2, two.SlopeVariance, 1e-12);
        Digits.Relative(one.Covariance / 2, two.Covariance, 1e-12);
    }

    [Fact]
    public void PredictionIsMostCertainAtTheWeightedMean()
    {
        StraightLine line = StraightLine.Fit(Exposures, Levels, Errors);
        double weights = Errors.Sum(e => 1 / (e * e)),
            mean = Exposures.Zip(Errors, (x, e) => x / (e * e)).Sum() / weights;
        Digits.Relative(mean, -line.Covariance / line.SlopeVariance, 1e-12);
        Digits.Relative(1 / Math.Sqrt(weights), line.At(mean).Uncertainty, 1e-9);
        Assert.All(Enumerable.Range(-100, 500), x => Assert.True(line.At(x).Uncertainty >= line.At(mean).Uncertainty));
        Assert.True(line.InterceptVariance * line.SlopeVariance >= line.Covariance * line.Covariance);
    }

    [Fact]
    public void AnImpossibleFitIsRefusedWithItsReason()
    {
        Assert.Contains(
            "2 points cannot determine 3 parameters",
            Assert.Throws<ArgumentException>(() => Polynomial.Fit([1, 2], [1, 2], [], 2)).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "positive and finite",
            Assert.Throws<ArgumentException>(() => StraightLine.Fit([1, 2], [1, 2], [1, double.NaN])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => StraightLine.Fit([5, 5, 5], [1, 2, 3]));
    }

    private static double[] Uncertainties(params double[] weights) => [.. weights.Select(w => 1 / Math.Sqrt(w))];

    private static void Check(
        StraightLine line,
        double a,
        double ua,
        double b,
        double ub,
        double covariance,
        double chiSquared
    )
    {
        Digits.Relative(a, line.Intercept, 5e-12);
        Digits.Relative(ua, line.InterceptUncertainty, 5e-12);
        Digits.Relative(b, line.Slope, 5e-12);
        Digits.Relative(ub, line.SlopeUncertainty, 5e-12);
        Digits.Relative(covariance, line.Covariance, 5e-12);
        Digits.Relative(chiSquared, line.ChiSquared, 5e-12);
    }
}
