using MathNet.Numerics.Distributions;
using SensorProfile.Drift.MasterDarks;

namespace SensorProfile.Tests.Drift.MasterDarks;

public class RobustSpreadTests
{
    /// <summary>
    /// Values on a lattice, as means of whole codes are: the median deviation alone is off by up to half a step, 7 % of
    /// σ here, whatever the number of pixels.
    /// </summary>
    /// <remarks>
    /// Standard error of the robust σ from 200 000 normal values: 1/√(2·0.3675·200 000) = 0.26 %; the lattice itself
    /// widens by h²/8 at most, 0.3 % of σ. Limit: four of the first and the second.
    /// </remarks>
    [Theory]
    [InlineData(0.08)]
    [InlineData(0.10)]
    [InlineData(0.12)]
    [InlineData(0.15)]
    [InlineData(0)]
    public void StepsBetweenTheValuesDoNotMatter(double step)
    {
        var random = new Random(11);
        var map = new float[200_000];
        for (int i = 0; i < map.Length; i++)
        {
            double z = Normal.Sample(random, 40, 1);
            map[i] = (float)(step > 0 ? Math.Round(z / step) * step : z);
        }
        Assert.InRange(RobustSpread.Measure(map), 0.986, 1.014);
    }

    [Fact]
    public void AMapOfOneValueHasNoSpread() => Assert.Equal(0, RobustSpread.Measure([3, 3, 3, float.NaN, 3]));
}
