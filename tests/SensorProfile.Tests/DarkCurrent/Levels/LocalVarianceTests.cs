using SensorProfile.DarkCurrent.Levels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.DarkCurrent.Levels;

public sealed class LocalVarianceTests
{
    private const int Pixels = 200_000;

    /// <summary>
    /// Differences of two frames of normal noise, each rounded to whole codes: the variance of a frame is σ², and up to
    /// q²/12 of rounding. Shares near Φ(±1) give σ to 1.2/√n, its square to 0.6 %.
    /// </summary>
    [Theory, InlineData(1, 2), InlineData(1, 8), InlineData(16, 32), InlineData(16, 12), InlineData(4, 2)]
    public void NormalNoiseInCodesOfAnyWidth(int codeStep, double sigma)
    {
        double variance = LocalVariance.Variance(Differences(codeStep, _ => sigma), codeStep);
        Assert.InRange(variance, 0.99 * sigma * sigma, 1.01 * sigma * sigma + codeStep * codeStep / 12.0);
    }

    /// <summary>
    /// One pixel in twenty has three times the noise: 0.05·8 = 40 % more in the mean variance. The quantile moves to
    /// the x with 0.95·Φ(−x) + 0.05·Φ(−x/3) = Φ(−1), x = 1.046: 9.4 % more here.
    /// </summary>
    [Fact]
    public void AFewNoisierPixelsHardlyCount() =>
        Assert.Equal(1.094, LocalVariance.Variance(Differences(1, i => i % 20 == 0 ? 24 : 8), 1) / 64, 0.01);

    private static IntegerHistogram Differences(int codeStep, Func<int, double> sigma)
    {
        var random = new Random(5);
        int Code(double sigma) => codeStep * (int)Math.Round((1000.3 + sigma * NormalNoise.Of(random)) / codeStep);
        return IntegerHistogram.Tally(Enumerable.Range(0, Pixels).Select(i => Code(sigma(i)) - Code(sigma(i))));
    }
}
