using SensorProfile.PhotonTransfer;

namespace SensorProfile.Tests.PhotonTransfer;

public sealed class LinearityTests
{
    [Fact]
    public void WeightedLineOfReleaseFour()
    {
        // Weighted least squares by hand, weights 1/y²: a 1.68922945, b 99.28751869, error 0.41154638 %.
        double[] x = [1, 2, 4, 6, 8, 9],
            y = [101, 199.5, 402, 600, 794, 890];
        LinearityResult result = Linearity.Fit(x, y, new double[6], saturationAdu: 1000)!;
        Assert.Equal(0.41154638, result.Error.Value, 5e-9);
        Assert.All(result.Deviations, d => Assert.NotNull(d));
        double fitted = 1.68922945 + 99.28751869 * 4;
        Assert.Equal(100 * (402 - fitted) / fitted, result.Deviations[2]!.Value, 1e-6);
    }

    [Fact]
    public void OnlyFiveToNinetyFivePercentOfSaturationCounts()
    {
        double[] x = [0.1, 1, 2, 4, 8, 12],
            y = [30, 100, 200, 400, 800, 1000];
        LinearityResult result = Linearity.Fit(x, y, new double[6], saturationAdu: 1000)!;
        Assert.Equal(0, result.Error.Value, 1e-10);
        Assert.Null(result.Deviations[0]);
        Assert.Null(result.Deviations[5]);
    }

    /// <summary>
    /// On an exact line nothing scatters: what is left is the noise of the means, √(Σ(100·u/ŷ)²/n)/√n.
    /// </summary>
    [Fact]
    public void TheNoiseOfTheMeansIsInTheDoubt()
    {
        LinearityResult result = Linearity.Fit([1, 2, 4, 8], [100, 200, 400, 800], [1, 1, 1, 1], 1000)!;
        Assert.Equal(0, result.Error.Value, 1e-10);
        double expected = Math.Sqrt((1 + 0.25 + 0.0625 + 0.015625) / 4);
        Assert.Equal(expected, result.Error.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void ThreeExposuresSayNothing() =>
        Assert.Null(Linearity.Fit([1, 2, 3], [100, 200, 300], new double[3], 1000));
}
