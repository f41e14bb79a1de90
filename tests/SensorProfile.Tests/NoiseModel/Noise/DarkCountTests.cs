using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class DarkCountTests
{
    [Theory] // smallest n with √(1 + 1/n) ≤ 1 + p
    [InlineData(0.01, 50)]
    [InlineData(0.02, 25)]
    [InlineData(0.05, 10)]
    public void OneLightAndEqualNoise(double loss, double expected)
    {
        Assert.Equal(expected, MinDarks.Smallest(1, 1, loss));
        Assert.True(MinDarks.Loss(1, 1, expected) <= loss);
        Assert.True(MinDarks.Loss(1, 1, expected - 1) > loss);
    }

    [Theory] // √(1 + 1/n) − 1
    [InlineData(50, 0.0099505)]
    [InlineData(25, 0.0198039)]
    [InlineData(10, 0.0488088)]
    [InlineData(49, 0.0101525)]
    [InlineData(24, 0.0206207)]
    [InlineData(9, 0.0540926)]
    public void LossByNumber(double darks, double loss) => Assert.Equal(loss, MinDarks.Loss(1, 1, darks), 5e-8);

    [Theory] // n = (N_d/N)²·M/((1 + p)² − 1), rounded up
    [InlineData(1.0, 50, 0.05, 488)]
    [InlineData(0.25, 50, 0.05, 122)]
    [InlineData(0.25, 50, 0.01, 622)]
    public void ManyLights(double varianceRatio, double lights, double loss, double expected) =>
        Assert.Equal(expected, MinDarks.Smallest(varianceRatio, lights, loss));

    [Fact]
    public void TheSmallestNumberSatisfiesAndOneLessDoesNot()
    {
        for (double ratio = 0.03; ratio < 3; ratio *= 1.7)
        for (int lights = 1; lights <= 200; lights += 13)
            foreach (double loss in new[] { 0.005, 0.01, 0.05, 0.2 })
            {
                double n = MinDarks.Smallest(ratio, lights, loss);
                Assert.True(MinDarks.Loss(ratio, lights, n) <= loss);
                Assert.True(n == 1 || MinDarks.Loss(ratio, lights, n - 1) > loss);
            }
    }

    [Theory] // "at least 20 darks" (common practice, no source): √(1 + (N_d/N)²·M/20) − 1 against 5 %
    [InlineData(1, 1, 0.024695, true)]
    [InlineData(1, 50, 0.87083, false)]
    [InlineData(0.09, 50, 0.10680, false)]
    public void TwentyDarks(double varianceRatio, double lights, double cost, bool accepted)
    {
        Assert.Equal(cost, MinDarks.Loss(varianceRatio, lights, 20), 5e-6);
        Assert.Equal(accepted, RulesOfThumb.TwentyDarksSuffice(varianceRatio, lights, 0.05));
        Assert.Contains(
            accepted ? "within the 5 % accepted" : "more than the 5 % accepted",
            RulesOfThumb.TwentyDarks(varianceRatio, lights, 0.05),
            StringComparison.Ordinal
        );
    }

    [Fact] // √(1 + r/20) ≤ 1.05 for r = (N_d/N)²·M ≤ 20·(1.05² − 1) = 2.05
    public void TwentyDarksLimit()
    {
        Assert.True(RulesOfThumb.TwentyDarksSuffice(2.0499, 1, 0.05));
        Assert.False(RulesOfThumb.TwentyDarksSuffice(2.0501, 1, 0.05));
    }
}
