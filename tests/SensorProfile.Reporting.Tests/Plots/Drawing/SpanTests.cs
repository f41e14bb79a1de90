using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Tests.Plots.Drawing;

public class SpanTests
{
    [Theory]
    [InlineData(3, 140, 2, 200)]
    [InlineData(0.0061, 0.0061, 0.001, 0.01)] // fewer than two powers of ten in sight: whole decades
    [InlineData(120, 63300, 100, 100000)]
    [InlineData(1, 1000, 0.5, 2000)] // the ends do not lie on the frame
    public void ALogarithmicAxisEndsOnOneTwoOrFive(double low, double high, double from, double to)
    {
        Span steps = new Span(low, high).ToDecadeSteps();
        Assert.Equal(from, steps.Low, 1e-9 * from);
        Assert.Equal(to, steps.High, 1e-9 * to);
    }

    [Fact]
    public void ARangeWithoutLengthGetsOne()
    {
        Assert.True(new Span(5, 5).Padded(0.1) is { Low: < 5, High: > 5 });
        Assert.Equal(new Span(0, 1), Span.Of([double.NaN]));
        Assert.Equal(new Span(1, 10), Span.OfPositive([-1, 0]));
        Assert.Equal(new Span(-2, 3), Span.Of([3, double.PositiveInfinity, -2]));
    }
}
