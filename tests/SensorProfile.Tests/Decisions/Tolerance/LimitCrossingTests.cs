using SensorProfile.Decisions.Tolerance;

namespace SensorProfile.Tests.Decisions.Tolerance;

public class LimitCrossingTests
{
    /// <summary>A load whose power rises from 1.5 to 4; it reaches 1 at x = 1.</summary>
    private static double Load(double x) => 0.5 * Math.Pow(x, 1.5) + 0.5 * Math.Pow(x, 4);

    [Fact]
    public void TheFirstCrossingIsFoundEvenWhereTheLoadFallsAgain()
    {
        Assert.Equal(1, LimitCrossing.FirstAboveOne(Load, 100)!.Value, 1e-7);
        Assert.Equal(1, LimitCrossing.FirstAboveOne(x => x < 3 ? x : 0.5, 100)!.Value, 1e-7);
        Assert.Null(LimitCrossing.FirstAboveOne(x => x / 200, 100));
    }

    [Theory] // from near and far, below and above
    [InlineData(0.9)]
    [InlineData(0.97)]
    [InlineData(1.0)]
    [InlineData(1.05)]
    [InlineData(1.3)]
    [InlineData(0.2)]
    [InlineData(5.0)]
    public void FromAnExpectedPlaceItIsFoundToAThousandth(double near) =>
        Assert.Equal(1, LimitCrossing.FirstAboveOne(Load, 100, new LimitCrossing.Expected(near))!.Value, 2e-3);

    [Fact] // a load that jumps is no power law, and its jump lies at 1
    public void AJumpIsFoundToItsBracket() =>
        Assert.InRange(
            LimitCrossing.FirstAboveOne(x => x < 1 ? 0.5 : 2, 100, new LimitCrossing.Expected(1.1))!.Value,
            0.9,
            1.1
        );

    [Fact]
    public void WhereNoneIsExpectedOneIsFoundAllTheSame()
    {
        Assert.Null(LimitCrossing.FirstAboveOne(x => x / 200, 100, new LimitCrossing.Expected(null)));
        Assert.Equal(50, LimitCrossing.FirstAboveOne(x => x / 50, 100, new LimitCrossing.Expected(null))!.Value, 1e-3);
        Assert.Null(LimitCrossing.FirstAboveOne(x => x / 200, 100, new LimitCrossing.Expected(99)));
    }
}
