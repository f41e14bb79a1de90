namespace SensorProfile.FixedPattern;

/// <summary>Search for the division of a pixel's samples into equally spaced levels that leaves the least scatter.</summary>
/// <remarks>With the step d of a set fixed, samples in ascending order and deviations from the set's mean, putting the j₁ highest at least one level up and the j₂ highest of these two
/// lowers the sum of squares by 2d·(H(j₁) + H(j₂)) − d²·(Σz² − (Σz)²/n), H(j) the sum of the j highest, Σz = j₁ + j₂, Σz² = j₁ + 3·j₂. With the division fixed the step follows by
/// least squares. The two are repeated in turn.</remarks>
internal sealed class LevelDivision
{
    private const double ResolvedSigmas = 6;

    private readonly double[][] heights;                 // of each set, H(0 … n)
    private readonly int[][] order;                      // of each set, its samples from the highest down
    private readonly double[] weights, scales;
    private readonly int levels;
    private readonly bool thermal;
    private readonly SampleGroup[] groups;
    private readonly double[] squares;                   // Σ(x − mean of the set)² of each set

    /// <summary>Prepares the samples.</summary>
    /// <param name="groups">Sets of at least two frames.</param> <param name="thermal">Whether the step grows with the dark signal.</param> <param name="levels">2 or 3.</param>
    public LevelDivision(SampleGroup[] groups, bool thermal, int levels)
    {
        (this.groups, this.levels, this.thermal) = (groups, levels, thermal);
        heights = new double[groups.Length][];
        order = new int[groups.Length][];
        squares = [.. groups.Select(g => SumOfSquares(g.Values))];
        int freedom = groups.Sum(g => g.Values.Length - 1);
        double excess = Excess(groups, squares);
        weights = [.. groups.Select(g => 1 / (g.Variance + excess))];
        Scatter = weights.Zip(squares, (w, s) => w * s).Sum();
        CameraScatter = groups.Zip(squares, (g, s) => s / g.Variance).Sum();
        Floor = groups.Zip(weights, (g, w) => (g.Values.Length - 1) * g.Variance * w).Sum() * (freedom - 1) / freedom;
        scales = [.. groups.Select(g => thermal ? g.Thermal : 1)];
        for (int g = 0; g < groups.Length; g++)
        {
            double[] values = groups[g].Values;
            double mean = values.Average();
            order[g] = [.. Enumerable.Range(0, values.Length).OrderByDescending(i => values[i])];
            heights[g] = new double[values.Length + 1];
            for (int j = 0; j < values.Length; j++) heights[g][j + 1] = heights[g][j] + values[order[g][j]] - mean;
        }
    }

    /// <summary>Q₀ = Σ(x − mean of the set)²/(variance + the pixel's excess): the scatter about one level per set.</summary>
    public double Scatter { get; }

    /// <summary>The same without the excess.</summary>
    public double CameraScatter { get; }

    /// <summary>What the camera's own noise leaves of <see cref="Scatter"/> after a step was fitted.</summary>
    public double Floor { get; }

    /// <summary>A division.</summary>
    /// <param name="Step">Step between levels, in the unit of the samples over that of the scale.</param> <param name="Reduction">By how much it lowers <see cref="Scatter"/>.</param>
    /// <param name="Information">1/u² of the step for the expected noise.</param> <param name="States">Level of every sample of every set, 0 the lowest, in the order of time.</param>
    public sealed record Solution(double Step, double Reduction, double Information, byte[][] States);

    /// <summary>The states in those sets whose step is so large that noise does not take a sample from one level to the next.</summary>
    public byte[][] Resolved(Solution found)
    {
        if (!thermal) return found.States;
        double excess = Excess(groups, [.. squares.Select((s, g) => Math.Max(0, s - Reduction(g, found.States[g], found.Step * scales[g])))]);
        return [.. found.States.Where((_, g) => found.Step * scales[g] > ResolvedSigmas * Math.Sqrt(groups[g].Variance + excess))];
    }

    /// <summary>Steps to begin with, those that explain most in their own set first.</summary>
    public IEnumerable<double> Starts() => Enumerable.Range(0, heights.Length).Where(g => scales[g] > 0).Select(BestAlone).Where(s => s.Step > 0).OrderByDescending(s => s.Reduction).Select(s => s.Step);

    /// <summary>Improves a step until the division stays.</summary>
    public Solution Improve(double step, int mostRounds)
    {
        var splits = new (int One, int Two)[heights.Length];
        double reduction = 0, information = 0;
        for (int round = 0; round < mostRounds; round++)
        {
            bool same = round > 0;
            for (int g = 0; g < heights.Length; g++)
            {
                (int, int) split = Split(g, step * scales[g]);
                same &= split == splits[g];
                splits[g] = split;
            }
            if (same) break;
            double pull = 0;
            information = 0;
            for (int g = 0; g < heights.Length; g++)
            {
                (int one, int two) = splits[g];
                pull += weights[g] * scales[g] * (heights[g][one] + heights[g][two]);
                information += weights[g] * scales[g] * scales[g] * Spread(one, two, heights[g].Length - 1);
            }
            if (!(information > 0) || !(pull > 0)) return new(0, 0, 0, []);
            step = pull / information;
            reduction = pull * pull / information;
        }
        return new(step, reduction, information, [.. splits.Select((s, g) => States(g, s))]);
    }

    private (double Step, double Reduction) BestAlone(int g)
    {
        int n = heights[g].Length - 1;
        (double Step, double Reduction) best = (0, 0);
        for (int j = 1; j < n; j++)
        {
            double spread = Spread(j, 0, n), reduction = weights[g] * heights[g][j] * heights[g][j] / spread;
            // Of three levels the two outer ones are taken for a single step of two.
            if (reduction > best.Reduction) best = (heights[g][j] / spread / scales[g] / (levels == 3 ? 1.5 : 1), reduction);
        }
        return best;
    }

    private (int One, int Two) Split(int g, double step)
    {
        int n = heights[g].Length - 1;
        (int One, int Two) best = (0, 0);
        double most = 0;
        if (!(step > 0)) return best;
        for (int one = 1; one < n; one++)                // all of a set in the upper level is the same as none
            for (int two = 0, last = levels == 3 ? one : 0; two <= last; two++)
            {
                double reduction = 2 * step * (heights[g][one] + heights[g][two]) - step * step * Spread(one, two, n);
                if (reduction > most) (most, best) = (reduction, (one, two));
            }
        return best;
    }

    private double Reduction(int g, byte[] states, double step)
    {
        int one = states.Count(z => z > 0), two = states.Count(z => z > 1);
        return 2 * step * (heights[g][one] + heights[g][two]) - step * step * Spread(one, two, states.Length);
    }

    private byte[] States(int g, (int One, int Two) split)
    {
        var states = new byte[order[g].Length];
        for (int j = 0; j < split.One; j++) states[order[g][j]] = (byte)(j < split.Two ? 2 : 1);
        return states;
    }

    /// <summary>Variance that the pixel has above the expected in all sets alike: the mean of s² − expected with the weights of the variances' own errors, which the quiet sets rule.</summary>
    private static double Excess(SampleGroup[] groups, double[] squares)
    {
        double excess = 0;
        for (int round = 0; round < 4; round++)
        {
            double sum = 0, weight = 0;
            for (int g = 0; g < groups.Length; g++)
            {
                double w = 1 / (groups[g].Variance + excess);
                sum += w * w * (squares[g] - (groups[g].Values.Length - 1) * groups[g].Variance);
                weight += w * w * (groups[g].Values.Length - 1);
            }
            excess = Math.Max(0, sum / weight);
        }
        return excess;
    }

    private static double SumOfSquares(double[] values)
    {
        double mean = values.Average(), sum = 0;
        foreach (double value in values) sum += (value - mean) * (value - mean);
        return sum;
    }

    private static double Spread(int one, int two, int n) => one + 3.0 * two - (double)(one + two) * (one + two) / n;
}
