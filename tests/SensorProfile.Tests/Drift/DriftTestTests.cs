using SensorProfile.Drift;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Drift;

public sealed class DriftTestTests
{
    [Fact]
    public void ZIsTheChangeOverTheJointUncertainty() // 0.040/√(0.012² + 0.015²)
    {
        double z = DriftTest.Z(new Measurement(1.500, 0.012, "e-", 1, ""), new Measurement(1.540, 0.015, "e-", 1, ""));
        Assert.Equal(2.082316825181, z, 11);
        Assert.Equal(0.03731354, Probability.NormalTwoSided(z), 8);
    }

    [Fact]
    public void HolmHoldsTheFamily() // worked by the rule of Holm 1979, Scand. J. Stat. 6, 65
    {
        Assert.Equal(
            [0.03, 0.06, 0.06, 0.02],
            HolmAdjustment.Adjust([0.01, 0.04, 0.03, 0.005]).Select(p => Math.Round(p, 12))
        );
        Assert.Equal(
            [0.05, 0.12, 0.20, 0.12, 0.03, 0.14],
            HolmAdjustment.Adjust([0.01, 0.04, 0.20, 0.03, 0.005, 0.07]).Select(p => Math.Round(p, 12))
        );
    }

    [Theory]
    [InlineData(0, 5, 0.0625)] // 2·½⁵
    [InlineData(5, 0, 0.0625)]
    [InlineData(3, 3, 1)]
    [InlineData(0, 0, 1)]
    [InlineData(2, 8, 0.109375)] // 2·(1 + 10 + 45)/1024
    public void CountsAreComparedExactly(long first, long second, double p) =>
        Assert.Equal(p, DriftTest.CountsP(first, second), 12);

    [Fact]
    public void ZOfAProbabilityIsItsInverse()
    {
        Assert.Equal(-2.082316825181, DriftTest.ZOf(0.037313540, -1), 6);
        Assert.Equal(0, DriftTest.ZOf(1, 1));
    }

    [Fact]
    public void TheDetectableChangeIsWhatFourInFiveTestsFind() =>
        Assert.Equal(1.959963984540054 + 0.8416212335729143, DriftTest.Detectable(1, 0.05, 1), 9);
}
