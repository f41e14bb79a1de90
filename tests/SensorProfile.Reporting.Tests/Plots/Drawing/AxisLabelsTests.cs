using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Tests.Plots.Drawing;

public class AxisLabelsTests
{
    [Theory]
    [InlineData(0.001, "0.001")]
    [InlineData(0.0001, "10⁻⁴")]
    [InlineData(0.0002, "0.0002")]
    [InlineData(1000, "1000")]
    [InlineData(100000, "10⁵")]
    [InlineData(30000, "30000")]
    public void PowersOfTenStandWherePlainDigitsAreHardToRead(double value, string expected) =>
        Assert.Equal(expected, AxisLabels.Power(value));

    [Theory]
    [InlineData(-0.5, "−0.5")]
    [InlineData(1e-17, "0")]
    [InlineData(60000, "60000")]
    public void PlainLabelsHaveATrueMinusAndNoDust(double value, string expected) =>
        Assert.Equal(expected, AxisLabels.Plain(value));
}
