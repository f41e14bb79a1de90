using SensorProfile.Decisions.Exposure;

namespace SensorProfile.Tests.Decisions.Exposure;

public class SubExposureTests
{
    [Theory] // c = 1/((1 + p)² − 1)
    [InlineData(0.01, 49.7512437811)]
    [InlineData(0.02, 24.7524752475)]
    [InlineData(0.05, 9.75609756098)]
    [InlineData(0.10, 4.76190476190)]
    [InlineData(0.20, 2.27272727273)]
    public void Factor(double loss, double expected) => Assert.Equal(expected, SubExposure.Shortest(1, 1, loss), 5e-11);

    [Theory] // t = c·R²/B
    [InlineData(1.5, 0.5, 0.05, 43.9024390244)]
    [InlineData(3.5, 1.2, 0.10, 48.6111111111)]
    public void Worked(double readNoise, double background, double loss, double expected) =>
        Assert.Equal(expected, SubExposure.Shortest(readNoise * readNoise, background, loss), 5e-11);

    [Fact]
    public void TheLossIsExactlyReachedThere()
    {
        for (double loss = 0.003; loss < 0.5; loss *= 1.5)
        {
            double t = SubExposure.Shortest(2.3, 0.7, loss);
            Assert.Equal(loss, Math.Sqrt(1 + 2.3 / (0.7 * t)) - 1, 1e-14);
        }
    }
}
