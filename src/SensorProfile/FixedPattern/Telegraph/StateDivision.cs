namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Searches for the division of the samples of a pixel into equally spaced levels that leaves the least scatter.
/// </summary>
/// <remarks>For a fixed step d in a set, with the samples sorted and taken as deviations from the set mean, putting the
/// j₁ highest at least one level up and the j₂ highest of these two levels up lowers the sum of squares by 2d·(H(j₁) +
/// H(j₂)) − d²·(Σz² − (Σz)²/n), H(j) the sum of the j highest, Σz = j₁ + j₂, Σz² = j₁ + 3·j₂. With the division fixed,
/// the step follows by least squares. The two steps alternate.</remarks>
internal sealed class StateDivision
{
    private const double ResolvedSigmas = 6;

    private readonly TelegraphSamples samples;
    private readonly double[] scales;
    private readonly int levels;
    private readonly bool thermal;

    /// <summary>Prepares the search.</summary>
    /// <param name="samples">The samples of a pixel.</param>
    /// <param name="thermal">Whether the step grows with the dark signal.</param>
    /// <param name="levels">2 or 3.</param>
    public StateDivision(TelegraphSamples samples, bool thermal, int levels)
    {
        (this.samples, this.levels, this.thermal) = (samples, levels, thermal);
        scales = [.. samples.Groups.Select(g => thermal ? g.Thermal : 1)];
    }

    /// <summary>A division into levels.</summary>
    /// <param name="Step">Step between levels, in units of the samples over those of the scale.</param>
    /// <param name="Reduction">Reduction of <see cref="TelegraphSamples.Scatter"/> by this division.</param>
    /// <param name="Information">1/u² of the step for the expected noise.</param>
    /// <param name="Splits">For every set, the number of samples at least one and at least two levels up.</param>
    public sealed record Solution(double Step, double Reduction, double Information, (int One, int Two)[] Splits);

    /// <summary>Level of every sample of every set, 0 the lowest, in time order.</summary>
    public byte[][] States(Solution found) => [.. found.Splits.Select((split, g) => States(g, split))];

    /// <summary>
    /// The states in the sets whose step is so large that noise cannot move a sample from one level to the next.
    /// </summary>
    public byte[][] Resolved(Solution found, byte[][] states)
    {
        if (!thermal)
            return states;
        double excess = samples.Excess([
            .. samples.Squares.Select((s, g) => Math.Max(0, s - Reduction(g, found.Splits[g], found.Step * scales[g]))),
        ]);
        return
        [
            .. states.Where(
                (_, g) => found.Step * scales[g] > ResolvedSigmas * Math.Sqrt(samples.Groups[g].Variance + excess)
            ),
        ];
    }

    /// <summary>Starting steps; those that explain most in their own set come first.</summary>
    public IEnumerable<double> Starts() =>
        Enumerable
            .Range(0, scales.Length)
            .Where(g => scales[g] > 0)
            .Select(BestAlone)
            .Where(s => s.Step > 0)
            .OrderByDescending(s => s.Reduction)
            .Select(s => s.Step);

    /// <summary>Refines a step until the division no longer changes.</summary>
    public Solution Improve(double step, int mostRounds)
    {
        double[][] heights = samples.Heights;
        double[] weights = samples.Weights;
        var splits = new (int One, int Two)[heights.Length];
        double reduction = 0,
            information = 0;
        for (int round = 0; round < mostRounds; round++)
        {
            bool same = round > 0;
            for (int g = 0; g < heights.Length; g++)
            {
                (int, int) split = Split(g, step * scales[g]);
                same &= split == splits[g];
                splits[g] = split;
            }
            if (same)
                break;
            double pull = 0;
            information = 0;
            for (int g = 0; g < heights.Length; g++)
            {
                (int one, int two) = splits[g];
                pull += weights[g] * scales[g] * (heights[g][one] + heights[g][two]);
                information += weights[g] * scales[g] * scales[g] * samples.Spread(g, one, two);
            }
            if (!(information > 0) || !(pull > 0))
                return new(0, 0, 0, []);
            step = pull / information;
            reduction = pull * pull / information;
        }
        return new(step, reduction, information, splits);
    }

    private (double Step, double Reduction) BestAlone(int g)
    {
        double[] heights = samples.Heights[g];
        (double Step, double Reduction) best = (0, 0);
        for (int j = 1; j < heights.Length - 1; j++)
        {
            double spread = samples.Spread(g, j, 0),
                reduction = samples.Weights[g] * heights[j] * heights[j] / spread;
            // Three equally filled levels, split in two, lie 1.5 steps apart.
            if (reduction > best.Reduction)
                best = (heights[j] / spread / scales[g] / (levels == 3 ? 1.5 : 1), reduction);
        }
        return best;
    }

    private (int One, int Two) Split(int g, double step)
    {
        (int One, int Two) best = (0, 0);
        if (!(step > 0))
            return best;
        double[] heights = samples.Heights[g],
            shares = samples.Shares[g];
        double most = 0,
            twice = 2 * step,
            square = step * step;
        // having all of a set in the upper level is the same as none
        for (int one = 1; one < heights.Length - 1; one++)
        for (int two = 0, last = levels == 3 ? one : 0; two <= last; two++)
        {
            double reduction = twice * (heights[one] + heights[two]) - square * (one + 3.0 * two - shares[one + two]);
            if (reduction > most)
                (most, best) = (reduction, (one, two));
        }
        return best;
    }

    private double Reduction(int g, (int One, int Two) split, double step) =>
        2 * step * (samples.Heights[g][split.One] + samples.Heights[g][split.Two])
        - step * step * samples.Spread(g, split.One, split.Two);

    private byte[] States(int g, (int One, int Two) split)
    {
        int[] order = samples.Order[g];
        var states = new byte[order.Length];
        for (int j = 0; j < split.One; j++)
            states[order[j]] = (byte)(j < split.Two ? 2 : 1);
        return states;
    }
}
