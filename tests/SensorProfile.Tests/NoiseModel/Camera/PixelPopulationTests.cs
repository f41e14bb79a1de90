using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.NoiseModel.Camera;

public sealed class PixelPopulationTests
{
    [Theory, InlineData(1, 0), InlineData(0.03, 0.001), InlineData(40, 0.02)]
    public void RatesOfAllClassesAreThoseOfEach(double thermal, double floor)
    {
        var rates = RateDistribution.From(
            new FixedPatternProfile
            {
                RateQuantiles = [Rate(0.5, 0.006), Rate(0.9, 0.02), Rate(0.99, 0.3), Rate(0.9999, 4)],
            },
            1_000_000
        )!;
        // two classes with a spread of laws: three powers for every rate beyond them, shared by all of these
        var laws = new PixelLaws(6, [Law(0.1, 0.5, 7), Law(0.5, 2, 8)]);
        PixelPopulation pixels = PixelPopulation.Of(rates, hotAbove: 0.2, laws);
        var growth = new RateFactors(thermal, floor);
        Assert.Contains(pixels.Classes, c => c is { LawExponent: not 1, Hot: false });
        double[] all = pixels.RatesAt(growth),
            typical = pixels.RatesAt(growth, withHotPixels: false);
        Assert.Equal(pixels.Classes.Select(c => c.RateAt(growth)), all); // to the last bit
        for (int i = 0; i < all.Length; i++)
        {
            Assert.Equal((pixels.Classes[i].Weight, pixels.Classes[i].Hot), (pixels.Weights[i], pixels.Hot[i]));
            if (!pixels.Hot[i])
                Assert.Equal(all[i], typical[i]);
        }
    }

    private static DoublingByRate Law(double from, double to, double doubling) =>
        new(from, to, new Measurement(doubling, 0.1, "°C", 1000, "true value"), 0.5, 1000);

    private static RateQuantile Rate(double share, double rate) =>
        new(share, new Measurement(rate, 0.0001, "e-/px/s", 1, "true value"));
}
