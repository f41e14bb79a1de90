using System.Collections.Concurrent;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// How a stack that rejects outliers treats one sensor pixel among the k whose samples meet at one place of a dithered
/// stack.
/// </summary>
/// <remarks>
/// The stack: M samples of a place, M/k from each of k sensor pixels. Sigma clipping: samples farther than c·1.4826·MAD
/// from their median are left out, once, and the rest is averaged. Winsorised: they are set to that limit, and all are
/// averaged. Median: the median. The response has no closed form for the few samples of real stacks (the MAD of five
/// samples is known to 40 %, and a single pixel out of five widens it by a third), so it is found by seeded trials with
/// normal samples: k − 1 pixels of mean 0 and standard deviation 1, and one (or h) of mean x and standard deviation ρ,
/// for a grid of x and ρ. Every trial is repeated with all signs reversed, and every node uses the same deviates, so
/// that differences are known far better than the values. What is left of a pixel differs from place to place (at an x
/// near c some of its samples stay, elsewhere none), so the distribution over the trials is kept, not only its mean.
/// Interpolated linearly between the nodes, in ln ρ; even in x.
/// Valid for one pass of rejection; a stack that repeats it removes slightly more. Beyond <see cref="MaxSamples"/>
/// samples the response no longer changes, and the response of that number is used.
/// </remarks>
internal sealed class ClippedMean
{
    // parts of the places, ranked by what is left there: finest for the small share of places where much is left
    private static readonly double[] shares =
    [
        0.004,
        0.012,
        0.034,
        0.08,
        0.16,
        0.21,
        0.21,
        0.16,
        0.08,
        0.034,
        0.012,
        0.004,
    ];

    private const int MaxSamples = 120;
    private static readonly double[] excesses = [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 11, 16, 30];
    private static readonly double[] logSpreads = [.. new[] { 0.25, 0.5, 1, 2, 4, 8, 16 }.Select(s => Math.Log(s))];
    private static readonly ConcurrentDictionary<(int, int, double, Rejection, int), Lazy<ClippedMean>> known = [];

    // computed on first use: most of the grid is never needed
    private readonly Lazy<Node>[,] nodes = new Lazy<Node>[excesses.Length, logSpreads.Length];
    private readonly Lazy<StackTrials.Part[]> usual; // when the pixel is like the others
    private readonly Lazy<StackTrials.Part[]>[] level; // when it only scatters more or less
    private readonly Lazy<double> cost;
    private readonly StackTrials stack;

    private ClippedMean(int samples, int positions, double cut, Rejection method, int outliers)
    {
        stack = new StackTrials(samples, positions, cut, method, outliers);
        cost = new(stack.CostOf);
        usual = new(() => stack.Parts(excess: 0, spread: 1));
        level =
        [
            .. logSpreads.Select(log => new Lazy<StackTrials.Part[]>(() => stack.Parts(excess: 0, Math.Exp(log)))),
        ];
        for (int i = 0; i < excesses.Length; i++)
        for (int j = 0; j < logSpreads.Length; j++)
        {
            (int row, int column) = (i, j);
            nodes[i, j] = new(() => At(row, column));
        }
    }

    /// <summary>
    /// Variance of the stack of normal samples over that of their plain mean: what rejection costs where there is nothing
    /// to reject; π/2 for the median of many.
    /// </summary>
    internal double Cost => stack.Samples < 3 ? 1 : cost.Value;

    /// <summary>The response of a stack; computed once for each kind of stack.</summary>
    /// <param name="lights">M.</param>
    /// <param name="dithers">k.</param>
    /// <param name="cut">c.</param>
    /// <param name="method">How outliers are rejected.</param>
    internal static ClippedMean Find(int lights, int dithers, double cut, Rejection method)
    {
        int samples = Math.Min(lights, MaxSamples);
        return Known(samples, Math.Min(dithers, samples), cut, method, outliers: 1);
    }

    /// <summary>
    /// The response of the same stack where several of the k pixels stand out: median and MAD then lie farther out, and
    /// each outlier is rejected less. The result is for one of them; all are alike.
    /// </summary>
    /// <param name="count">How many, 1 to k.</param>
    internal ClippedMean With(int count) => Known(stack.Samples, stack.Positions, stack.Cut, stack.Method, count);

    private static ClippedMean Known(int samples, int positions, double cut, Rejection method, int outliers) =>
        known
            .GetOrAdd((samples, positions, cut, method, outliers), k => new Lazy<ClippedMean>(() =>
                new ClippedMean(k.Item1, k.Item2, k.Item3, k.Item4, k.Item5)
            ))
            .Value;

    /// <summary>The response to a pixel.</summary>
    /// <param name="excess">Its mean above that of the others, in units of their standard deviation.</param>
    /// <param name="spread">Standard deviation of its own samples, in units of the others'.</param>
    /// <returns>Left: the part of the excess that stays in the stack, 1 where nothing is rejected. Noise: the variance
    /// of its samples as it reaches the stack, in units of the others'; spread² where nothing is rejected.</returns>
    internal (double Left, double Noise) To(double excess, double spread)
    {
        if (NothingIsRejected)
            return (1, spread * spread);
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        Node node = Node.Mix(
            Node.Mix(nodes[row, column].Value, nodes[row, column + 1].Value, across),
            Node.Mix(nodes[row + 1, column].Value, nodes[row + 1, column + 1].Value, across),
            down
        );
        return (Bounded(node.Left, node.Left, excess), Math.Max(node.Kept * spread * spread, 0));
    }

    /// <summary>Only the part of the excess that stays in the stack.</summary>
    internal double LeftOf(double excess, double spread)
    {
        if (NothingIsRejected)
            return 1;
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        double left = Node.Mix(
            Node.Mix(nodes[row, column].Value.Left, nodes[row, column + 1].Value.Left, across),
            Node.Mix(nodes[row + 1, column].Value.Left, nodes[row + 1, column + 1].Value.Left, across),
            down
        );
        return Bounded(left, left, excess);
    }

    /// <summary>Shares of the places that <see cref="PartsLeft"/> tells apart.</summary>
    internal static ReadOnlySpan<double> PlaceShares => shares;

    /// <summary>
    /// The part of the excess that stays in the stack at the places that the pixel meets, smallest first: the mean over
    /// each of <see cref="PlaceShares"/>.
    /// </summary>
    internal void PartsLeft(double excess, double spread, Span<double> parts)
    {
        if (NothingIsRejected)
        {
            parts.Fill(1);
            return;
        }
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        double[] one = nodes[row, column].Value.Parts,
            more = nodes[row, column + 1].Value.Parts,
            farther = nodes[row + 1, column].Value.Parts,
            both = nodes[row + 1, column + 1].Value.Parts;
        for (int q = 0; q < parts.Length; q++)
            parts[q] = Node.Mix(Node.Mix(one[q], more[q], across), Node.Mix(farther[q], both[q], across), down);
        double middle = parts[parts.Length / 2];
        for (int q = 0; q < parts.Length; q++)
            parts[q] = Bounded(parts[q], middle, excess);
    }

    /// <summary>
    /// A part beyond the largest excess of the grid: where the stack rejects the pixel, what is left no longer grows.
    /// </summary>
    private static double Bounded(double part, double typical, double excess) =>
        typical < 0.5 ? part * Math.Min(1, excesses[^1] / Math.Abs(excess)) : part;

    private bool NothingIsRejected => stack.Positions < 2 || stack.Samples < 3;

    private static ((int Index, double Part) Row, (int Index, double Part) Column) Places(
        double excess,
        double spread
    ) => (Place(excesses, Math.Abs(excess)), Place(logSpreads, Math.Log(Math.Max(spread, 1e-9))));

    /// <summary>A response: the part of the excess that is left, and the part of the pixel's own variance.</summary>
    private readonly record struct Node(double Left, double Kept, double[] Parts)
    {
        internal static Node Mix(Node a, Node b, double part) =>
            new(Mix(a.Left, b.Left, part), Mix(a.Kept, b.Kept, part), []);

        internal static double Mix(double a, double b, double part) => a + part * (b - a);
    }

    private static (int Index, double Part) Place(double[] grid, double value)
    {
        int next = 1;
        while (next < grid.Length - 1 && !(grid[next] >= value))
            next++;
        return (next - 1, Math.Clamp((value - grid[next - 1]) / (grid[next] - grid[next - 1]), 0, 1));
    }

    private Node At(int row, int column)
    {
        StackTrials.Part[] likeOthers = this.usual.Value,
            level = this.level[column].Value;
        double excess = excesses[row],
            spread = Math.Exp(logSpreads[column]),
            whole = 0,
            lost = 0,
            usuallyLost = 0;
        var ofOdd = new RunningVariance();
        // the same pixel when it is like the others: the ratio removes the cost of clipping and most of the random
        // error
        var usual = new RunningVariance();
        var all = new RunningVariance();
        var allUsual = new RunningVariance();
        StackTrials.Part[] trials = stack.Parts(excess, spread);
        double[] left = new double[trials.Length];
        for (int trial = 0; trial < trials.Length; trial++)
        {
            int count = stack.OddSamples(trial);
            double share = (double)count / stack.Samples;
            StackTrials.Part with = trials[trial],
                alike = likeOthers[trial];
            whole += with.Mean / share / excess;
            left[trial] = (with.Mean - level[trial].Mean) / share / excess;
            all.Add(level[trial].Mean + share * excess * left[trial]);
            allUsual.Add(alike.Mean);
            lost += 1 - (double)with.Kept / count;
            usuallyLost += 1 - (double)alike.Kept / count;
            ofOdd.Add(with.Own / Math.Sqrt(share));
            usual.Add(alike.Own / Math.Sqrt(share));
        }
        Array.Sort(left);
        double[] parts = MeansOf(left);
        if (stack.Method != Rejection.SigmaClip)
        {
            // what the pixel's samples add to the variance of the whole: (k − 1 + own)/k of the usual one
            double ownVariance = 1 + stack.Positions * (all.Value / allUsual.Value - 1);
            return new Node(whole / trials.Length, Math.Max(ownVariance, 0) / (spread * spread), parts);
        }
        (lost, usuallyLost) = (lost / trials.Length, usuallyLost / trials.Length);
        // the others' share of the mean grows where this pixel's samples are left out: their variance (1 − 1/k) → (1 −
        // 1/k)/(1 − lost/k)²
        int k = stack.Positions;
        double others = (k - 1) * (Math.Pow((1 - usuallyLost / k) / (1 - lost / k), 2) - 1);
        return new Node(whole / trials.Length, (ofOdd.Value / usual.Value + others) / (spread * spread), parts);
    }

    /// <summary>Mean of the sorted values in each of the parts.</summary>
    private static double[] MeansOf(double[] sorted)
    {
        double[] means = new double[shares.Length];
        double from = 0;
        for (int q = 0; q < means.Length; q++)
        {
            double to = from + shares[q] * sorted.Length;
            for (int i = (int)from; i < sorted.Length && i < to; i++)
                means[q] += sorted[i] * (Math.Min(i + 1, to) - Math.Max(i, from));
            means[q] /= to - from;
            from = to;
        }
        return means;
    }

    private struct RunningVariance
    {
        private double count,
            sum,
            squares;

        internal readonly double Value => squares / count - sum / count * (sum / count);

        internal void Add(double value) => (count, sum, squares) = (count + 1, sum + value, squares + value * value);
    }
}
