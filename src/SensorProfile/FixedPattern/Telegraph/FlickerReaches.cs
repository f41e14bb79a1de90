using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Simulates which flickering pixels the frames of a mode can reveal.</summary>
/// <remarks>
/// Pixels with a readout step between two levels, with equal mean dwell times, are simulated over the frames as taken
/// (with their times where known, otherwise each frame independently) and with the noise of the camera; those that
/// scatter beyond the limit are counted. With 100 of each kind, a share is known to 5 %.
/// </remarks>
internal static class FlickerReaches
{
    private const int Pixels = 100;
    private static readonly double[] steps = [1.5, 2, 3, 4, 6, 10],
        dwells = [10, 100, 1000, 10000];

    /// <summary>Makes the table; empty without read noise.</summary>
    /// <param name="groups">Sets of frames of an ordinary pixel, for variance and times; the values do not
    /// matter.</param>
    /// <param name="readNoise">e-.</param>
    /// <param name="limits">Q/ν above which a pixel counts, as a function of ν.</param>
    public static IReadOnlyList<FlickerReach> Find(
        IReadOnlyList<SampleGroup> groups,
        double readNoise,
        Func<int, double> limits
    )
    {
        if (!(readNoise > 0))
            return [];
        var found = new List<FlickerReach>();
        for (int s = 0; s < steps.Length; s++)
        for (int d = 0; d < dwells.Length; d++)
        {
            var random = new Random(100 * s + d);
            int counted = 0;
            for (int i = 0; i < Pixels; i++)
                if (
                    ExcessNoise.Measure(Drawn(groups, steps[s] * readNoise, dwells[d], random)) is { } noise
                    && noise.Ratio > limits(noise.Freedom)
                )
                    counted++;
            found.Add(new(steps[s], dwells[d], counted / (double)Pixels));
        }
        return found;
    }

    private static SampleGroup[] Drawn(IReadOnlyList<SampleGroup> groups, double step, double dwell, Random random)
    {
        var drawn = new SampleGroup[groups.Count];
        bool up = random.NextDouble() < 0.5;
        double clock = double.NaN;
        for (int g = 0; g < drawn.Length; g++)
        {
            double[] values = new double[groups[g].Values.Length];
            double noise = Math.Sqrt(groups[g].Variance);
            for (int k = 0; k < values.Length; k++)
            {
                double start = groups[g].StartSeconds[k],
                    apart = Math.Abs(start - clock);
                // the memory of two states of equal dwell time fades as exp(−2t/dwell)
                double same = double.IsFinite(apart) ? 0.5 + 0.5 * Math.Exp(-2 * apart / dwell) : 0.5;
                up ^= random.NextDouble() >= same;
                values[k] = (up ? step : 0) + noise * Probability.NormalQuantile(1 - random.NextDouble() * (1 - 1e-12));
                clock = start;
            }
            drawn[g] = groups[g] with { Values = values };
        }
        return drawn;
    }
}
