using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Scatter above which a pixel goes to the level test, which is far slower than checking these limits.
/// </summary>
internal sealed class TelegraphSuspects
{
    private const double Chance = 1e-4; // probability that a sound pixel is tested, which only costs time

    /// <summary>Computes the limits.</summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="freedom">Degrees of freedom of the scatter of a pixel in the darks.</param>
    public TelegraphSuspects(PatternInput input, int freedom)
    {
        double Pooled(double chance) =>
            freedom < 1 ? double.PositiveInfinity : Probability.ChiSquaredQuantile(1 - chance, freedom) / freedom;
        double[] Unlit(double chance) =>
            [
                .. input.UnlitSets.Select(s =>
                    s.Frames.Count < 2
                        ? double.PositiveInfinity
                        : (input.UnlitVariance + LevelVariance(s.FrameLevels))
                            * Probability.ChiSquaredQuantile(1 - chance, s.Frames.Count - 1)
                            / (s.Frames.Count - 1)
                ),
            ];
        (PooledLimit, UnlitLimits) = (Pooled(Chance), Unlit(Chance));
        (LooseLimit, LooseUnlitLimits) = (Pooled(ExcessSearch.LoosestChance), Unlit(ExcessSearch.LoosestChance));
    }

    /// <summary>Scatter in the darks above which the noise of a pixel is measured.</summary>
    public double LooseLimit { get; }

    /// <summary>The same in each bias set, ADU².</summary>
    public double[] LooseUnlitLimits { get; }

    /// <summary>
    /// Scatter in the darks, relative to what noise and signal explain, above which a pixel is tested.
    /// </summary>
    public double PooledLimit { get; }

    /// <summary>Variance in each bias set above which a pixel is tested, ADU².</summary>
    public double[] UnlitLimits { get; }

    /// <summary>Variance that a level shared by all pixels adds to each of them, ADU².</summary>
    private static double LevelVariance(IReadOnlyList<double[]> levels)
    {
        if (levels.Count < 2)
            return 0;
        double[] frames = [.. levels.Select(l => l.Average())];
        double mean = frames.Average();
        return frames.Sum(l => (l - mean) * (l - mean)) / (frames.Length - 1);
    }
}
