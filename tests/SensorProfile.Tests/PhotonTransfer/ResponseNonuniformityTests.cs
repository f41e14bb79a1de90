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

    /// <summary>
    /// u(s²) = √(3·3000² + 2·400²)/√10⁶ = 5.23; the lower end of s is √(2500 − 1.96·5.23), and a 95 % interval is ±1.96 u.
    /// </summary>
    [Fact]
    public void TheDoubtReachesTheEndsOfTheVariance()
    {
        double ofVariance = Math.Sqrt(3 * 3000.0 * 3000 + 2 * 400.0 * 400) / 1000,
            expected = 100 * (50 - Math.Sqrt(2500 - 1.959964 * ofVariance)) / 1.959964 / 10_000;
        Assert.Equal(
            expected,
            ResponseNonuniformity.Measure(light, 400, new(500, 150, 1_000_000), 50, 500)!.StandardUncertainty,
            1e-9
        );
    }

    /// <summary>
    /// No pattern at all: the variance that is left scatters about 0 by its own uncertainty, and the interval holds 0 in 97.5 % of
    /// cases (only a positive excess of 1.96 u excludes it). Of 1000 draws 975 ± 5; u/(2s) holds it in 84 %.
    /// </summary>
    [Fact]
    public void NoPatternIsDeniedNoMoreOftenThanStated()
    {
        var random = new Random(11);
        int held = Enumerable
            .Range(0, 1000)
            .Count(_ =>
            {
                double off = MathNet.Numerics.Distributions.Normal.Sample(random, 0, Math.Sqrt(5) * 3000 / 1000.0);
                Measurement told = ResponseNonuniformity.Measure(
                    light with
                    {
                        Variance = 3000 + off,
                    },
                    3000,
                    null,
                    0,
                    500
                )!;
                return told.Value <= 1.959964 * told.StandardUncertainty;
            });
        Assert.InRange(held, 955, 990);
    }
}
