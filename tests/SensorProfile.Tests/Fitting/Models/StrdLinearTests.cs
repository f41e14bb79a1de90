using SensorProfile.Fitting.Models;

namespace SensorProfile.Tests.Fitting.Models;

/// <summary>NIST StRD linear regression: the certified values of the .dat files.</summary>
public class StrdLinearTests
{
    [DataTheory("nist-strd")]
    [InlineData("Norris", 1, 1e-10)]
    [InlineData("Pontius", 2, 1e-9)]
    [InlineData("Filip", 10, 1e-6)]
    [InlineData("Wampler5", 5, 1e-5)]
    public void PolynomialsReachTheCertifiedDigits(string name, int degree, double tolerance)
    {
        StrdData data = StrdData.Regression(name);
        Check(data, Polynomial.Fit(data.X(), data.Y, [], degree), tolerance);
    }

    [DataTheory("nist-strd")]
    [InlineData("NoInt1", 1e-12)]
    public void LineThroughTheOriginReachesTheCertifiedDigits(string name, double tolerance)
    {
        StrdData data = StrdData.Regression(name);
        Check(data, LinearLeastSquares.Fit([data.X()], data.Y), tolerance);
    }

    [DataTheory("nist-strd")]
    [InlineData("Longley", 1e-9)]
    public void SixPredictorsReachTheCertifiedDigits(string name, double tolerance)
    {
        StrdData data = StrdData.Regression(name);
        double[] ones = [.. Enumerable.Repeat(1.0, data.Rows.Length)];
        Check(data, LinearLeastSquares.Fit([ones, .. Enumerable.Range(0, 6).Select(data.X)], data.Y), tolerance);
    }

    [DataTheory("nist-strd")]
    [InlineData("Norris", 1e-10)]
    public void StraightLineAgreesWithTheCertifiedLine(string name, double tolerance)
    {
        StrdData data = StrdData.Regression(name);
        StraightLine line = StraightLine.Fit(data.X(), data.Y).Scaled();
        Digits.Relative(data.Certified[0], line.Intercept, tolerance);
        Digits.Relative(data.Certified[1], line.Slope, tolerance);
        Digits.Relative(data.Deviations[0], line.InterceptUncertainty, tolerance);
        Digits.Relative(data.Deviations[1], line.SlopeUncertainty, tolerance);
    }

    private static void Check(StrdData data, LinearFit fit, double tolerance)
    {
        Assert.Equal(data.Certified.Length, fit.Parameters.Length);
        for (int i = 0; i < fit.Parameters.Length; i++)
        {
            Digits.Relative(data.Certified[i], fit.Parameters[i], tolerance);
            Digits.Relative(data.Deviations[i], Math.Sqrt(fit.ReducedChiSquared) * fit.Uncertainty(i), tolerance);
        }
        Digits.Relative(data.ResidualStandardDeviation, Math.Sqrt(fit.ReducedChiSquared), tolerance);
    }
}
