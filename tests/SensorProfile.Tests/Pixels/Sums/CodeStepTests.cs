using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;

namespace SensorProfile.Tests.Pixels.Sums;

public class CodeStepTests
{
    [
        Theory,
        InlineData(new[] { 500, 501, 503 }, 1, 0),
        InlineData(new[] { 16, 48, 64 }, 16, 0),
        InlineData(new[] { 5, 8, 14, 20 }, 3, 2),
        InlineData(new[] { 7 }, 1, 0)
    ]
    public void TheLargestCommonStepIsFound(int[] codes, int step, int offset)
    {
        var found = CodeStep.Find(IntegerHistogram.Tally(codes));
        Assert.Equal((step, offset, codes.Length, 0L), (found.Step, found.Offset, found.CodesUsed, found.Exceptions));
    }

    [Fact]
    public void ClippingToTheEndsOfTheRangeDoesNotHideTheStep()
    {
        var found = CodeStep.Find(
            IntegerHistogram.Tally([.. Enumerable.Range(10, 50).Select(i => 16 * i), 65535, 65535, 0])
        );
        // 0 fits, 65535 does not
        Assert.Equal((16, 0, 50, 2L), (found.Step, found.Offset, found.CodesUsed, found.Exceptions));
    }

    [Theory, InlineData(0.9, true, 9, 11), InlineData(0.875, true, 7.5, 8.5), InlineData(1.0, false, 0, 0)]
    public void AFactorBelowOneDoublesACodeNowAndThen(double factor, bool scaled, double least, double most)
    {
        var population = Population(factor);
        Assert.Equal(scaled, population.LooksScaled);
        if (scaled)
            // factor f folds 1/f codes into one: every f/(1 − f) codes one more
            Assert.InRange(population.DoubledSpacing, least - 1.01, most);
        Assert.Equal(0, population.Missing);
    }

    [Fact]
    public void AFactorAboveOneLeavesGaps()
    {
        var population = Population(1.125);
        Assert.True(population.LooksScaled);
        Assert.Equal(9, population.MissingSpacing, 0.5); // 9 codes for 8
        Assert.Equal(0, population.Doubled);
    }

    private static CodePopulation Population(double factor)
    {
        var noise = new NormalNoise(4);
        var codes = IntegerHistogram.Tally(
            Enumerable.Range(0, 200_000).Select(_ => 16 * (int)Math.Floor(factor * Math.Round(2000 + noise.Next(60))))
        );
        return CodePopulation.Count(codes, new CodeStep(16, 0, 100, 0));
    }
}
