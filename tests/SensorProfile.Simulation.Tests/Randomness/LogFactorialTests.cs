using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Tests.Randomness;

public class LogFactorialTests
{
    [Fact]
    public void SumOfLogarithmsAgrees()
    {
        double sum = 0;
        for (int k = 1; k <= 20_000; k++)
        {
            sum += Math.Log(k);
            Assert.Equal(sum, LogFactorial.Of(k), 1e-12 * Math.Max(1, sum));
        }
    }
}
