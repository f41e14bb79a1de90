using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Finds steps in the means of columns (or rows), as left by separate amplifiers or taps.</summary>
/// <remarks>
/// At every position, a straight line with a step is fitted by least squares to the W lines on either side (W an eighth
/// of all, 8 … 64): step = Σ r·y/Σ r², r the step function minus its straight-line part, so that gradients and, by
/// symmetry, curvature leave no step. Its standard uncertainty is σ/√(Σ r²) with σ from the differences of neighbouring
/// lines (MAD/√2), or the robust spread of all fitted steps if larger, which covers lines that resemble their
/// neighbours. A step counts when the probability of normal noise showing one as strong anywhere among the n positions
/// is at most 10⁻⁴, two-sided: n·P(|Z| > z) ≤ 10⁻⁴. The strongest step is removed and the search repeated.
/// </remarks>
internal static class BoundarySearch
{
    /// <summary>Upper limit on the probability that a profile without a step shows one.</summary>
    public const double FalseAlarms = 1e-4;

    private const int NarrowestWindow = 8,
        WidestWindow = 64,
        MaxSteps = 15;

    /// <summary>A step.</summary>
    /// <param name="At">First line after the step, 0-based.</param>
    /// <param name="Step">Level after minus level before.</param>
    /// <param name="Uncertainty">Standard uncertainty.</param>
    /// <param name="Chance">n·P(|Z| > z).</param>
    internal readonly record struct Found(int At, double Step, double Uncertainty, double Chance);

    /// <summary>The steps of a profile, in order of position.</summary>
    /// <param name="means">Mean of each line.</param>
    public static IReadOnlyList<Found> Find(double[] means)
    {
        int window = Math.Clamp(means.Length / 8, NarrowestWindow, WidestWindow);
        if (means.Length < 4 * NarrowestWindow)
            return [];
        double[] profile = WithoutOutliers(means),
            kernel = Kernel(window);
        double information = kernel.Sum(r => r * r);
        var found = new List<Found>();
        while (found.Count < MaxSteps)
        {
            double[] steps =
            [
                .. Enumerable
                    .Range(window, means.Length - 2 * window + 1)
                    .Select(at => Step(profile, at, kernel, window) / information),
            ];
            double[] differences = [.. profile.Zip(profile.Skip(1), (a, b) => b - a)];
            double uncertainty = Math.Max(
                OrderStatistics.MadSigma(differences) / Math.Sqrt(2) / Math.Sqrt(information),
                OrderStatistics.MadSigma(steps)
            );
            int strongest = Enumerable.Range(0, steps.Length).MaxBy(i => Math.Abs(steps[i]));
            double chance =
                uncertainty > 0
                    ? Math.Min(1, steps.Length * Probability.NormalTwoSided(steps[strongest] / uncertainty))
                    : 1;
            if (chance > FalseAlarms)
                break;
            int at = strongest + window;
            found.Add(new(at, steps[strongest], uncertainty, chance));
            for (int i = at; i < profile.Length; i++)
                profile[i] -= steps[strongest];
        }
        return
        [
            .. found.GroupBy(f => f.At).Select(g => g.First() with { Step = g.Sum(f => f.Step) }).OrderBy(f => f.At),
        ];
    }

    /// <summary>A profile with the steps removed.</summary>
    public static double[] Without(double[] means, IReadOnlyList<Found> steps) =>
        [.. means.Select((m, i) => m - steps.Where(s => s.At <= i).Sum(s => s.Step))];

    private static double[] WithoutOutliers(double[] means)
    {
        double[] profile = [.. means];
        foreach ((int line, double excess, _) in LineOutliers.Find(means, 0))
            profile[line] -= excess;
        return profile;
    }

    private static double[] Kernel(int window)
    {
        double[] x = [.. Enumerable.Range(-window, 2 * window).Select(i => i + 0.5)],
            step = [.. x.Select(v => v > 0 ? 0.5 : -0.5)];
        double slope = x.Zip(step, (a, b) => a * b).Sum() / x.Sum(v => v * v);
        return [.. x.Zip(step, (a, b) => b - slope * a)];
    }

    private static double Step(double[] profile, int at, double[] kernel, int window)
    {
        double sum = 0;
        for (int i = 0; i < kernel.Length; i++)
            sum += kernel[i] * profile[at - window + i];
        return sum;
    }
}
