using SensorProfile.PhotonTransfer;

namespace SensorProfile.Tests.PhotonTransfer;

public sealed class ResponseNonuniformityTests
{
    private static readonly NeighbourSpread light = new(Mean: 10_500, Variance: 3_000, Pairs: 1_000_000);

    /// <summary>EMVA 1288 by hand: √(3000 − 400 − (150 − 50)) / (10500 − 500) = 50/10000 = 0.5 %.</summary>
    [Fact]
    public void NoiseAndDarkPatternAreTakenOff() =>
        Assert.Equal(0.5, ResponseNonuniformity.Measure(light, 400, new(500, 150, 1_000_000), 50, 500)!.Value, 1e-12);

    /// <summary>Without bias frames their pattern stays: √(3000 − 400)/10000.</summary>
    [Fact]
    public void WithoutABiasItsPatternStays() =>
        Assert.Equal(0.01 * Math.Sqrt(2600), ResponseNonuniformity.Measure(light, 400, null, 50, 500)!.Value, 1e-12);

    /// <summary>u(s²) = √(3·3000² + 2·400²)/√10⁶, divided by 2·s·signal (derivation in the class).</summary>
    [Fact]
    public void TheDoubtIsThatOfTheVariances()
    {
        double ofVariance = Math.Sqrt(3 * 3000.0 * 3000 + 2 * 400.0 * 400) / 1000,
            expected = 100 * ofVariance / (2 * 50 * 10_000.0);
        Assert.Equal(
            expected,
            ResponseNonuniformity.Measure(light, 400, new(500, 150, 1_000_000), 50, 500)!.StandardUncertainty,
            1e-12
        );
    }
}
