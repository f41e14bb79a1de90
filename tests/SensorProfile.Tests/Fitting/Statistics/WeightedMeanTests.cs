using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

public sealed class WeightedMeanTests
{
    /// <summary>Values that agree better than they should do not make the mean better known than its errors say.</summary>
    [Fact]
    public void TheBirgeFactorNeverShrinksTheDoubt()
    {
        WeightedMean calm = WeightedMean.Combine([10, 10.001, 9.999], [1, 1, 1]);
        Assert.True(calm.ChiSquared < 1e-5);
        Assert.Equal(1 / Math.Sqrt(3), calm.Uncertainty, 1e-12);
        Assert.Equal(calm.Uncertainty, calm.BirgeUncertainty);
    }

    /// <summary>By hand: χ² of 8, 10, 12 with errors of 1 is 8 with two degrees of freedom, the factor √(8/2) = 2.</summary>
    [Fact]
    public void TheBirgeFactorWidensByTheScatter() =>
        Assert.Equal(2 / Math.Sqrt(3), WeightedMean.Combine([8, 10, 12], [1, 1, 1]).BirgeUncertainty, 1e-12);

    [Fact]
    public void OneValueHasNoScatter() => Assert.Equal(0.5, WeightedMean.Combine([3], [0.5]).BirgeUncertainty);
}
