using SensorProfile.FixedPattern.DarkRates;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

/// <summary>A pixel whose signal does not grow in proportion.</summary>
public sealed class SlopeMisfitTests
{
    private static readonly ExposureSlope line = new([10, 60, 120, 300], [-0.002, -0.001, 0, 0.003], 122.5);

    private static readonly SeriesLevels levels = new()
    {
        Slope = line,
        Levels =
        [
            [100],
            [100],
            [100],
            [100],
        ],
        Variances =
        [
            [4],
            [5],
            [6],
            [9],
        ],
        Frames = [4, 8, 4, 10],
        Centres = [0],
        Noise = 0.01,
        Spread = 0.01,
    };

    [Fact]
    public void ABentLineIsSeen() => Assert.True(SlopeMisfit.Exceeds(line, levels, [-30, 30, 30, 0], 0.2, 0, 0.8, 1));
}
