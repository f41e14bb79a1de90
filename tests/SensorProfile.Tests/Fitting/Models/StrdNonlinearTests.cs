using SensorProfile.Fitting.Models;

namespace SensorProfile.Tests.Fitting.Models;

/// <summary>
/// NIST StRD nonlinear sets, with the digits that a sound double-precision method reaches.
/// </summary>
public class StrdNonlinearTests
{
    [DataTheory("nist-strd")]
    [InlineData("MGH10", 0, 1e-6)]
    [InlineData("MGH10", 1, 1e-6)]
    [InlineData("Misra1a", 0, 1e-7)]
    [InlineData("Misra1a", 1, 1e-7)]
    [InlineData("Eckerle4", 0, 1e-8)]
    [InlineData("Eckerle4", 1, 1e-8)]
    [InlineData("Thurber", 0, 1e-6)]
    [InlineData("Thurber", 1, 1e-6)]
    [InlineData("MGH17", 0, 1e-5)]
    [InlineData("MGH17", 1, 1e-5)]
    [InlineData("Lanczos3", 0, 1e-4)]
    [InlineData("Lanczos3", 1, 1e-4)]
    [InlineData("BoxBOD", 1, 1e-7)]
    [InlineData("Rat43", 0, 1e-6)]
    [InlineData("Rat43", 1, 1e-6)]
    [InlineData("Chwirut2", 0, 1e-6)]
    [InlineData("Chwirut2", 1, 1e-6)]
    [InlineData("Misra1d", 0, 1e-6)]
    [InlineData("Misra1d", 1, 1e-6)]
    [InlineData("Hahn1", 0, 1e-5)]
    [InlineData("Hahn1", 1, 1e-5)]
    [InlineData("Bennett5", 0, 1e-5)]
    [InlineData("Bennett5", 1, 1e-5)]
    public void CertifiedValuesAreReached(string name, int start, double tolerance)
    {
        StrdData data = StrdData.Regression(name);
        NonlinearFit fit = LevenbergMarquardt.Fit(Model(name), data.X(), data.Y, [], data.Starts[start]);
        Assert.True(fit.Converged);
        for (int i = 0; i < data.Certified.Length; i++)
        {
            Close(data.Certified[i], fit.Parameters[i], tolerance);
            Close(
                data.Deviations[i],
                Math.Sqrt(fit.ChiSquared / fit.DegreesOfFreedom) * fit.Uncertainty(i),
                100 * tolerance
            );
        }
        Close(data.ResidualSumOfSquares, fit.ChiSquared, Math.Max(tolerance, 1e-7));
    }

    private static void Close(double expected, double actual, double relative) =>
        Assert.InRange(actual / expected, 1 - relative, 1 + relative);

    private static ModelValue Model(string name) =>
        name switch
        {
            "MGH10" => (x, b) => b[0] * Math.Exp(b[1] / (x + b[2])),
            "Misra1a" or "BoxBOD" => (x, b) => b[0] * (1 - Math.Exp(-b[1] * x)),
            "Eckerle4" => (x, b) => b[0] / b[1] * Math.Exp(-0.5 * Math.Pow((x - b[2]) / b[1], 2)),
            "Thurber" or "Hahn1" => (x, b) =>
                (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6]))),
            "MGH17" => (x, b) => b[0] + b[1] * Math.Exp(-x * b[3]) + b[2] * Math.Exp(-x * b[4]),
            "Lanczos3" => (x, b) =>
                b[0] * Math.Exp(-b[1] * x) + b[2] * Math.Exp(-b[3] * x) + b[4] * Math.Exp(-b[5] * x),
            "Rat43" => (x, b) => b[0] / Math.Pow(1 + Math.Exp(b[1] - b[2] * x), 1 / b[3]),
            "Chwirut2" => (x, b) => Math.Exp(-b[0] * x) / (b[1] + b[2] * x),
            "Misra1d" => (x, b) => b[0] * b[1] * x / (1 + b[1] * x),
            "Bennett5" => (x, b) => b[0] * Math.Pow(b[1] + x, -1 / b[2]),
            _ => throw new ArgumentOutOfRangeException(nameof(name)),
        };
}
