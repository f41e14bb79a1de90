using SensorProfile.Decisions.Tolerance;

namespace SensorProfile.Tests.Decisions.Tolerance;

public class LoadShapeTests
{
    /// <summary>A load whose power rises from 1.5 to 7, and reaches 1 at x = 2.</summary>
    private static double Load(double x) => 0.5 * Math.Pow(x / 2, 1.5) + 0.5 * Math.Pow(x / 2, 7);

    [Fact]
    public void ALoadOfTheSameShapeCrossesWhereTheShapeSays()
    {
        LoadShape shape = LoadShape.About(Load, 2)!;
        Assert.Equal(1, shape.Crossing(1)!.Value, 1e-12);
        double crossing = 2 * shape.Crossing(1.2)!.Value;
        Assert.Equal(1, 1.2 * Load(crossing), 0.02); // straight between places a seventh apart
        Assert.Null(shape.Crossing(10)); // beyond the places known
    }

    [Fact] // a load that falls on the way has no shape to follow
    public void ALoadThatFallsHasNone() => Assert.Null(LoadShape.About(x => x < 2.1 ? x / 2 : 0.1, 2));

    /// <summary>
    /// Draws that are higher, and grow otherwise, than the best model: crossings are found to a thousandth all the same.
    /// </summary>
    [Theory]
    [InlineData(1.02, 1)]
    [InlineData(1.3, 1)]
    [InlineData(0.6, 1)]
    [InlineData(1, 1.1)]
    [InlineData(4, 0.8)]
    [InlineData(0.2, 1.3)] // beyond the places known: looked for from scratch
    public void CrossingsOfDrawsAreFoundToAThousandth(double height, double power)
    {
        double Draw(double x) => height * Math.Pow(Load(x), power);
        double exact = LimitCrossing.FirstAboveOne(Draw, 100)!.Value;
        int asked = 0;
        double found = LimitCrossing
            .FirstAboveOne(
                x =>
                {
                    asked++;
                    return Draw(x);
                },
                100,
                new LimitCrossing.Expected(2, LoadShape.About(Load, 2))
            )!
            .Value;
        Assert.Equal(exact, found, 1e-3 * exact);
        if (power == 1 && height is > 0.5 and < 2)
            Assert.InRange(asked, 1, 4);
    }
}
