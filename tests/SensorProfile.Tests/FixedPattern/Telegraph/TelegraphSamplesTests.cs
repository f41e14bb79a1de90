using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.FixedPattern.Telegraph;

/// <summary>What spares the search for levels never hides a division that the search would find.</summary>
public sealed class TelegraphSamplesTests
{
    [Fact]
    public void NoDivisionLeavesLessThanTheBound()
    {
        var random = new Random(21);
        int searched = 0;
        for (int trial = 0; trial < 300; trial++)
        {
            var samples = new TelegraphSamples(Pixel(random, trial));
            foreach (int levels in (int[])[2, 3])
            foreach (bool thermal in (bool[])[false, true])
            {
                var division = new StateDivision(samples, thermal, levels);
                double least = samples.MinShare(levels, thermal) * samples.Scatter;
                foreach (double start in division.Starts())
                {
                    StateDivision.Solution found = division.Improve(start, 20);
                    Assert.True(
                        Math.Max(samples.Scatter - found.Reduction, samples.Floor) >= least * (1 - 1e-12),
                        $"trial {trial}, {levels} levels: {samples.Scatter - found.Reduction} left, bound " + $"{least}"
                    );
                    searched++;
                }
            }
        }
        Assert.InRange(searched, 3000, int.MaxValue);
    }

    [Fact]
    public void TheBoundIsMetWhereEverySetIsDividedAtItsBest()
    {
        // Two levels 10 apart and no noise: 4 of 8 samples up in both sets, H = 4·5 = 20, D = 4 − 16/8 = 2, H²/D = 200
        // = Σ(x − mean)²: nothing is left but the floor.
        SampleGroup set = new([0, 10, 0, 10, 10, 0, 0, 10], 1e-9, 5, new double[8]);
        var samples = new TelegraphSamples([set, set]);
        Assert.Equal(samples.Floor / samples.Scatter, samples.MinShare(2, false), 1e-6);
    }

    [Fact]
    public void SamplesAreOrderedFromTheHighestAndEqualOnesByTime()
    {
        var samples = new TelegraphSamples([new([3, 7, 3, 9, 7], 1, 0, new double[5])]);
        Assert.Equal([3, 1, 4, 0, 2], samples.Order[0]);
        Assert.Equal([0, 3.2, 4.4, 5.6, 2.8, 0], samples.Heights[0].Select(h => Math.Round(h, 9))); // mean 5.8
    }

    /// <summary>
    /// Noise of some size, in every other pixel with levels, in every third with a hit; the last set knows no dark
    /// signal.
    /// </summary>
    private static SampleGroup[] Pixel(Random random, int trial)
    {
        int[] frames = [2 + random.Next(9), 2 + random.Next(9), 5, 12];
        double sigma = 0.5 + 3 * random.NextDouble(),
            step = trial % 2 == 0 ? 8 * random.NextDouble() : 0;
        SampleGroup[] groups =
        [
            .. frames.Select(
                (n, g) =>
                    new SampleGroup(
                        [
                            .. Enumerable
                                .Range(0, n)
                                .Select(_ => sigma * NormalNoise.Of(random) + step * random.Next(2 + trial % 3)),
                        ],
                        1 + random.NextDouble(),
                        g == 3 ? 0 : 10 * (g + 1),
                        new double[n]
                    )
            ),
        ];
        if (trial % 3 == 0)
            groups[2].Values[1] += 300 * random.NextDouble();
        return groups;
    }
}
