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

    [Fact]
    public void ThreeExposuresSayNothing() =>
        Assert.Null(Linearity.Fit([1, 2, 3], [100, 200, 300], new double[3], 1000));
}
