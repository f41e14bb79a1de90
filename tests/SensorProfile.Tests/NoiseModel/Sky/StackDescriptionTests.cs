using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.NoiseModel.Sky;

public class StackDescriptionTests
{
    // one pixel in k stands out by x; 40 normal samples of a place, 40/k of them from that pixel
    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    public void AMedianAndAWinsorisedMeanLeaveNoMoreOfAPixelThanAMean(int positions)
    {
        const int Lights = 40,
            Trials = 4000;
        var random = new Random(40 + positions);
        foreach (double excess in new[] { 0.5, 1, 2, 4, 8, 30 })
        {
            double median = 0,
                winsorised = 0;
            for (int trial = 0; trial < Trials; trial++)
            {
                double[] samples =
                [
                    .. Enumerable
                        .Range(0, Lights)
                        .Select(i => SensorReader.Deviate(random) + (i % positions == 0 ? excess : 0)),
                ];
                Array.Sort(samples);
                double middle = (samples[19] + samples[20]) / 2;
                double[] apart = [.. samples.Select(s => Math.Abs(s - middle)).Order()];
                double limit = 3 * 1.482602218505602 * (apart[19] + apart[20]) / 2;
                median += middle / Trials;
                winsorised += samples.Average(s => Math.Clamp(s, middle - limit, middle + limit)) / Trials;
            }
            // three standard errors of a median of 40 over the trials: 3·1.25/√(40·4000) = 0.0094
            Assert.True(median <= excess / positions + 0.0094, $"{excess}: median {median}");
            Assert.True(winsorised <= excess / positions + 0.0094, $"{excess}: winsorised {winsorised}");
        }
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    [InlineData(4, false)]
    [InlineData(5, true)]
    public void AMedianOfFewPositionsIsRefused(int positions, bool judged)
    {
        var stack = new StackDescription { DitherPositions = positions, Rejection = Rejection.Median };
        void Conditions() => Guard.Conditions(stack.At(-10, NamedSkies.Default));
        if (judged)
            Conditions();
        else
            Assert.StartsWith(
                "A median of fewer than 5 dither positions cannot be judged",
                Assert.Throws<DecisionRefusedException>(Conditions).Message,
                StringComparison.Ordinal
            );
    }
}
