using SensorProfile.DarkCurrent.Levels;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.DarkCurrent.Levels;

public sealed class DarkLevelsTests
{
    // Medians of 400 frames of 2001 pixels: their standard deviation is known to 3.5 %, their variance to 7 %.
    [Theory, InlineData(0.0), InlineData(0.3), InlineData(0.8), InlineData(0.95)]
    public void AMedianMovesLessWherePatternHoldsThePixels(double fixedShare)
    {
        const int pixels = 2001,
            frames = 400;
        var random = new NormalNoise(31);
        double[] pattern = [.. Enumerable.Range(0, pixels).Select(_ => random.Next(Math.Sqrt(fixedShare)))];
        double[] medians =
        [
            .. Enumerable
                .Range(0, frames)
                .Select(_ =>
                    OrderStatistics.Median([.. pattern.Select(p => p + random.Next(Math.Sqrt(1 - fixedShare)))])
                ),
        ];
        double mean = medians.Average(),
            measured = medians.Sum(m => Math.Pow(m - mean, 2)) / (frames - 1),
            afresh = Math.Pow(OrderStatistics.MedianToMeanError, 2) / pixels;
        Assert.Equal(DarkLevels.MovingVariance(fixedShare), measured / afresh, 0.25 * measured / afresh);
    }
}
