using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

public sealed class RateQuantilesTests
{
    // Independent parts add in quadrature (GUM 5.1.2); an offset moves no value.
    [Fact]
    public void AnOffsetOfAllPixelsAddsToEveryUncertainty()
    {
        const double offset = 0.004;
        float[] rates = [.. Enumerable.Range(0, 20000).Select(i => 0.05f + (0.00001f * i))];
        float[] noise = [.. rates.Select(_ => 0.002f)];
        IReadOnlyList<RateQuantile> exact = RateQuantiles.Measure(rates, noise, 0.002, 0.01),
            off = RateQuantiles.Measure(rates, noise, 0.002, 0.01, offset);
        Assert.NotEmpty(exact);
        foreach ((RateQuantile without, RateQuantile with) in exact.Zip(off))
        {
            Assert.Equal(without.Rate.Value, with.Rate.Value);
            Assert.Equal(double.Hypot(without.Rate.StandardUncertainty, offset), with.Rate.StandardUncertainty, 1e-12);
        }
    }
}
