using SensorProfile.FixedPattern;

namespace SensorProfile.Tests.FixedPattern;

/// <summary>Pixels that are not looked at for a bent line have none.</summary>
public sealed class LineMisfitTests
{
    private static readonly ExposureLine line = new([10, 60, 120, 300], [-0.002, -0.001, 0, 0.003], 122.5);

    private static readonly SeriesLevels levels = new()
    {
        Line = line, Levels = [[100], [100], [100], [100]], Variances = [[4], [5], [6], [9]], Frames = [4, 8, 4, 10], Centres = [0], Noise = 0.01, Spread = 0.01,
    };

    [Fact]
    public void UpToTheStatedSlopeNoSignalsBendALine()
    {
        const double Gain = 0.8;
        // 7·√(4·0.64/4), 7·√(5·0.64/8), 7·√(6·0.64/4), 7·√(9·0.64/10) e-: the second is the least, 4.427 e- over 300 s.
        double slope = LineMisfit.StraightUpTo(line, levels, 0, Gain);
        Assert.Equal(4.427 / 300, slope, 1e-5);
        var random = new Random(3);
        for (int trial = 0; trial < 1000; trial++)
        {
            double[] signals = [.. Enumerable.Range(0, 4).Select(_ => 200 * (random.NextDouble() - 0.5))];
            Assert.False(LineMisfit.Exceeds(line, levels, signals, trial % 2 == 0 ? slope : -slope, 0, Gain, 1 + random.NextDouble()));
        }
    }

    [Fact]
    public void BeyondItABentLineIsSeen() => Assert.True(LineMisfit.Exceeds(line, levels, [-30, 30, 30, 0], 0.2, 0, 0.8, 1));
}
