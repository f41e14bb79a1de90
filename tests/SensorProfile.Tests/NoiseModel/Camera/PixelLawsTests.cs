using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.NoiseModel.Camera;

public class PixelLawsTests
{
    private static readonly DoublingByRate warm = Class(0.05, 0.1, 9, 300),
        hot = Class(0.1, 0.2, 7, 40);

    [Theory] // middles of the classes at √(from·to); the logarithm of the rate counts between them
    [InlineData(0.006, 6, 0)]
    [InlineData(0.05, 6, 0)]
    [InlineData(0.06, 9, 0.5)]
    [InlineData(0.1, 8, 0.5)]
    [InlineData(5, 7, 0.5)]
    public void APixelFollowsTheClassesMeasuredAndBelowThemTheTypicalLaw(double rate, double doubling, double spread)
    {
        (double found, double around) = new PixelLaws(6, [warm, hot]).At(rate);
        Assert.Equal((doubling, spread), (Math.Round(found, 9), Math.Round(around, 9)));
    }

    [Theory] // 800 pixels between the two rates: a third of them are 267
    [InlineData(267, 2)]
    [InlineData(266, 1)]
    public void ASlowClassCountsOnlyWhenItSpeaksForItsPixels(int measured, int classes)
    {
        var pattern = new FixedPatternProfile
        {
            DoublingByRate = [warm with { Pixels = measured }, hot],
            HotPixelCurve = [Count(0.05, 900), Count(0.1, 100), Count(0.2, 40)],
        };
        Assert.Equal(classes, PixelLaws.Representative(pattern, hotAbove: 0.12).Count);
    }

    [Fact] // a warm pixel that is not hot, with its own law: 0.06·2^(10/9) ten degrees warmer, not 0.06·2^(10/6)
    public void AWarmPixelNeedNotBeHotToHaveItsOwnLaw()
    {
        var rates = RateDistribution.From(
            new FixedPatternProfile
            {
                RateQuantiles = [Quantile(0.5, 0.006), Quantile(0.9, 0.06), Quantile(0.99, 0.06)],
            },
            1_000_000
        )!;
        PixelClass pixel = PixelPopulation
            .Of(rates, hotAbove: 0.12, new PixelLaws(6, [warm with { Spread = 0 }]))
            .Classes[^1];
        Assert.False(pixel.Hot);
        Assert.Equal(0.06 * Math.Pow(2, 10.0 / 9), pixel.RateAt(new RateFactors(Math.Pow(2, 10.0 / 6), 0)), 1e-12);
    }

    private static DoublingByRate Class(double from, double to, double doubling, int pixels) =>
        new(from, to, new Measurement(doubling, 0.1, "°C", pixels, "true value"), 0.5, pixels);

    private static HotPixelCount Count(double threshold, long count) => new(threshold, count, count, count);

    private static RateQuantile Quantile(double share, double rate) =>
        new(share, new Measurement(rate, 0.0001, "e-/px/s", 1, "true value"));
}
