using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.NoiseModel.Camera;

/// <summary>Stacks that cannot be, each refused in one sentence.</summary>
public class GuardTests
{
    private static readonly StackConditions Stack = new()
    {
        Sky = SkyRate.Given(0.5).Rate,
        ExposureSeconds = 300,
        TemperatureCelsius = -10,
        Lights = 20,
        DitherPositions = 1,
    };

    [Fact]
    public void AUsualStackPasses() => Guard.Conditions(Stack);

    [Fact]
    public void MoreDitherPositionsThanLightsAreRefused() =>
        AssertRefused(
            Stack with
            {
                Lights = 4,
                DitherPositions = 9,
            },
            "4 lights cannot have 9 dither positions: give at most one position per light."
        );

    [Fact]
    public void AMedianOfTwoPositionsIsRefused() =>
        AssertRefused(
            Stack with
            {
                DitherPositions = 2,
                Rejection = Rejection.Median,
            },
            $"A median of fewer than {StackConditions.MinPositions} dither positions cannot be judged: two hot "
                + "pixels that meet at one place of the sky pull it with them. Describe the stack as a plain mean, or dither over "
                + "more positions."
        );

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity)]
    public void ATemperatureThatIsNoNumberIsRefused(double celsius) =>
        AssertRefused(
            Stack with
            {
                TemperatureCelsius = celsius,
            },
            "The temperature of the lights must be a number in °C."
        );

    private static void AssertRefused(StackConditions stack, string message)
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => Guard.Conditions(stack));
        Assert.Equal(message, refused.Message);
        Assert.Equal(RefusalKind.BadArgument, refused.Kind);
    }
}
