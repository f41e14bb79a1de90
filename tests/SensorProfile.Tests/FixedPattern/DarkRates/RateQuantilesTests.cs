using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

public sealed class RateQuantilesTests(ITestOutputHelper output)
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

    /// <summary>
    /// Ordinary pixels, then a gap, then 2.05 % of defects whose rates begin at 0.13: the 98 % rank lies at their lower end,
    /// where noise moves pixels into the gap. Of 200 maps 95 % hold the truth, four standard errors less (√(0.95·0.05/200) each)
    /// at least; the doubt from the density alone holds it in 82 %.
    /// </summary>
    [Fact]
    public void AQuantileBesideTheGapIsHeldAsOftenAsStated()
    {
        const int Pixels = 20_000;
        const double Noise = 0.007;
        var uniform = new Random(5);
        var random = new NormalNoise(9);
        double[] truth =
        [
            .. Enumerable
                .Range(0, Pixels)
                .Select(i =>
                    i < 0.0205 * Pixels
                        ? 0.13 * Math.Pow(1 - uniform.NextDouble(), -1 / 1.2)
                        : 0.02 * Math.Exp(0.15 * random.Next())
                ),
        ];
        double right = truth.Order().ElementAt((int)Math.Round(0.98 * (Pixels - 1)));
        float[] noise = [.. truth.Select(t => (float)(t > 0.1 ? Noise : 0.002))];
        int held = Enumerable
            .Range(0, 200)
            .Count(_ =>
            {
                float[] seen = [.. truth.Select((t, i) => (float)(t + noise[i] * random.Next()))];
                Measurement told = RateQuantiles
                    .Measure(seen, noise, 0.002, common: 0)
                    .Single(q => q.Share == 0.98)
                    .Rate;
                return Math.Abs(told.Value - right) <= 1.96 * told.StandardUncertainty;
            });
        output.WriteLine($"held {held} of 200");
        Assert.InRange(held, 178, 200);
    }
}
