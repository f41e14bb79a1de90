using System.Collections.Concurrent;
using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// What a stack that rejects outliers does to one sensor pixel among the k whose samples meet at a place of a dithered
/// stack.
/// </summary>
/// <remarks>
/// The stack: M samples of a place, M/k from each of k sensor pixels. Sigma clipping: those farther than c·1.4826·MAD from
/// their median are left out, once, the rest is averaged. Winsorised: they are set to that limit, and all are averaged.
/// Median: the median. The response has no closed form for the few samples of real stacks (the MAD of five samples is known
/// to 40 %, and a single pixel out of five widens it by a third), so it is found by seeded trials with normal samples:
/// k − 1 pixels of mean 0 and standard deviation 1, one of mean x and standard deviation ρ, for a grid of x and ρ,
/// every trial also with all signs turned, and with the same deviates at every
/// node, so that differences are known far better than the values. What is left of a pixel differs from place to place (at
/// an x near c some of its samples stay, elsewhere none), so the distribution over the trials is kept, not only its mean.
/// Linear between the nodes, in ln ρ; even in x. Every
/// pixel of the population then stands alone among typical ones: places with several hot
/// pixels are taken as the sum, good as long as hot pixels are a small part of a place.
/// Valid for one pass of rejection; a stack that repeats it removes slightly more. Beyond <see cref="MaxSamples"/>
/// samples the response no longer changes and that of so many is taken.
/// </remarks>
internal sealed class ClippedMean
{
    /// <summary>Quantiles of what is left.</summary>
    internal const int Quantiles = 8;

    private const int MaxSamples = 120,
        Seed = 7411;
    private static readonly double[] excesses = [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 11, 16, 30];
    private static readonly double[] logSpreads = [.. new[] { 0.25, 0.5, 1, 2, 4, 8, 16 }.Select(s => Math.Log(s))];
    private static readonly ConcurrentDictionary<(int, int, double, Rejection), Lazy<ClippedMean>> known = [];

    private readonly Node[,] nodes = new Node[excesses.Length, logSpreads.Length];
    private readonly int positions;
    private readonly Rejection method;

    private ClippedMean(int samples, int positions, double cut, Rejection method)
    {
        (this.positions, this.method) = (positions, method);
        double[][] deviates = Deviates(samples, Math.Clamp(40_000 / samples, 300, 2000));
        Cost = samples < 3 ? 1 : CostOf(samples, cut);
        if (samples < 3 || positions < 2)
            return;
        // when the pixel is like the others, and when it only scatters more or less: the same for every node
        double[] sorted = new double[samples];
        Part[] usual = [.. deviates.Select((z, trial) => PartOf(z, sorted, OddOf(trial), cut))];
        Part[][] level =
        [
            .. logSpreads.Select(spread =>
                deviates
                    .Select(
                        (z, trial) =>
                        {
                            double[] own =
                            [
                                .. z.Select((v, i) => i % positions == OddOf(trial) ? Math.Exp(spread) * v : v),
                            ];
                            return PartOf(own, sorted, OddOf(trial), cut);
                        }
                    )
                    .ToArray()
            ),
        ];
        // each node in its own slot: the same at any thread count
        Parallel.For(0, excesses.Length, i =>
        {
            for (int j = 0; j < logSpreads.Length; j++)
                nodes[i, j] = At(excesses[i], Math.Exp(logSpreads[j]), deviates, usual, level[j], cut);
        });
    }

    /// <summary>
    /// Variance of the stack of normal samples over that of their plain mean: what rejection costs where there is nothing
    /// to reject; π/2 for the median of many.
    /// </summary>
    internal double Cost { get; }

    /// <summary>The response of a stack; computed once for each kind of stack.</summary>
    /// <param name="lights">M.</param>
    /// <param name="dithers">k.</param>
    /// <param name="cut">c.</param>
    /// <param name="method">How outliers are rejected.</param>
    internal static ClippedMean Of(int lights, int dithers, double cut, Rejection method)
    {
        int samples = Math.Min(lights, MaxSamples);
        var key = (samples, Math.Min(dithers, samples), cut, method);
        return known
            .GetOrAdd(key, k => new Lazy<ClippedMean>(() => new ClippedMean(k.Item1, k.Item2, k.Item3, k.Item4)))
            .Value;
    }

    /// <summary>The response to a pixel.</summary>
    /// <param name="excess">Its mean over that of the others, in their standard deviation.</param>
    /// <param name="spread">Standard deviation of its own samples, in that of the others.</param>
    /// <returns>Left: the part of the excess that stays in the stack, 1 where nothing is rejected. Noise: the variance
    /// of its samples as it reaches the stack, in that of the others; spread² where nothing is rejected.</returns>
    internal (double Left, double Noise) To(double excess, double spread)
    {
        if (NothingIsRejected)
            return (1, spread * spread);
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        Node node = Node.Mix(
            Node.Mix(nodes[row, column], nodes[row, column + 1], across),
            Node.Mix(nodes[row + 1, column], nodes[row + 1, column + 1], across),
            down
        );
        return (Bounded(node.Left, node.Left, excess), Math.Max(node.Kept * spread * spread, 0));
    }

    /// <summary>The part of the excess that stays in the stack, alone.</summary>
    internal double LeftOf(double excess, double spread)
    {
        if (NothingIsRejected)
            return 1;
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        double left = Node.Mix(
            Node.Mix(nodes[row, column].Left, nodes[row, column + 1].Left, across),
            Node.Mix(nodes[row + 1, column].Left, nodes[row + 1, column + 1].Left, across),
            down
        );
        return Bounded(left, left, excess);
    }

    /// <summary>
    /// The part of the excess that stays in the stack at each of the places that the pixel meets: quantiles of equal
    /// weight, smallest first.
    /// </summary>
    internal void PartsLeft(double excess, double spread, Span<double> parts)
    {
        if (NothingIsRejected)
        {
            parts.Fill(1);
            return;
        }
        ((int row, double down), (int column, double across)) = Places(excess, spread);
        for (int q = 0; q < parts.Length; q++)
            parts[q] = Node.Mix(
                Node.Mix(nodes[row, column].Parts[q], nodes[row, column + 1].Parts[q], across),
                Node.Mix(nodes[row + 1, column].Parts[q], nodes[row + 1, column + 1].Parts[q], across),
                down
            );
        double middle = parts[parts.Length / 2];
        for (int q = 0; q < parts.Length; q++)
            parts[q] = Bounded(parts[q], middle, excess);
    }

    /// <summary>
    /// A part beyond the largest excess of the grid: where the stack rejects the pixel, what is left no longer grows.
    /// </summary>
    private static double Bounded(double part, double typical, double excess) =>
        typical < 0.5 ? part * Math.Min(1, excesses[^1] / Math.Abs(excess)) : part;

    private bool NothingIsRejected => positions < 2 || nodes[0, 0].Left == 0;

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

    private Node At(double excess, double spread, double[][] deviates, Part[] likeOthers, Part[] level, double cut)
    {
        double whole = 0,
            lost = 0,
            usuallyLost = 0;
        var own = new RunningVariance();
        // of the same pixel when it is like the others: takes out the cost of clipping and most of the chance
        var usual = new RunningVariance();
        var all = new RunningVariance();
        var allUsual = new RunningVariance();
        double[] samples = new double[deviates[0].Length],
            sorted = new double[deviates[0].Length],
            left = new double[deviates.Length];
        for (int trial = 0; trial < deviates.Length; trial++)
        {
            double[] z = deviates[trial];
            int odd = OddOf(trial),
                count = (z.Length - odd + positions - 1) / positions;
            double share = (double)count / z.Length;
            for (int i = 0; i < z.Length; i++)
                samples[i] = i % positions == odd ? excess + spread * z[i] : z[i];
            Part with = PartOf(samples, sorted, odd, cut),
                alike = likeOthers[trial];
            whole += with.Mean / share / excess;
            left[trial] = (with.Mean - level[trial].Mean) / share / excess;
            all.Add(level[trial].Mean + share * excess * left[trial]);
            allUsual.Add(alike.Mean);
            lost += 1 - (double)with.Kept / count;
            usuallyLost += 1 - (double)alike.Kept / count;
            own.Add(with.Own / Math.Sqrt(share));
            usual.Add(alike.Own / Math.Sqrt(share));
        }
        Array.Sort(left);
        double[] parts =
        [
            .. Enumerable.Range(0, Quantiles).Select(q => left[(int)((q + 0.5) * left.Length / Quantiles)]),
        ];
        if (method != Rejection.SigmaClip)
        {
            // what the pixel's samples add to the variance of the whole: (k − 1 + own)/k of the usual one
            double ownVariance = 1 + positions * (all.Value / allUsual.Value - 1);
            return new Node(whole / deviates.Length, Math.Max(ownVariance, 0) / (spread * spread), parts);
        }
        (lost, usuallyLost) = (lost / deviates.Length, usuallyLost / deviates.Length);
        // the others' share of the mean grows where this pixel's samples are left out: their variance (1 − 1/k) → (1 −
        // 1/k)/(1 − lost/k)²
        double others = (positions - 1) * (Math.Pow((1 - usuallyLost / positions) / (1 - lost / positions), 2) - 1);
        return new Node(whole / deviates.Length, (own.Value / usual.Value + others) / (spread * spread), parts);
    }

    /// <summary>Which of the pixels is the odd one in a trial.</summary>
    private int OddOf(int trial) => trial / 2 % positions;

    private Part PartOf(double[] samples, double[] sorted, int odd, double cut)
    {
        samples.CopyTo(sorted, 0);
        if (method == Rejection.Median)
        {
            Array.Sort(sorted);
            return new Part((sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2, 0, 0);
        }
        (double median, double limit) = Limits(sorted, cut);
        double all = 0,
            own = 0;
        if (method == Rejection.Winsorised)
        {
            foreach (double sample in samples)
                all += Math.Clamp(sample, median - limit, median + limit);
            return new Part(all / samples.Length, 0, 0);
        }
        int kept = 0,
            ownKept = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            if (Math.Abs(samples[i] - median) > limit)
                continue;
            all += samples[i];
            kept++;
            if (i % positions != odd)
                continue;
            own += samples[i];
            ownKept++;
        }
        return kept == 0 ? new Part(median, 0, 0) : new Part(all / kept, own / kept, ownKept);
    }

    /// <summary>A clipped mean, what one pixel's samples are of it, and how many of them were kept.</summary>
    private readonly record struct Part(double Mean, double Own, int Kept);

    private struct RunningVariance
    {
        private double count,
            sum,
            squares;

        internal readonly double Value => squares / count - sum / count * (sum / count);

        internal void Add(double value) => (count, sum, squares) = (count + 1, sum + value, squares + value * value);
    }

    /// <summary>
    /// By the difference d from the plain mean, whose variance is known: M·(1/M + 2·cov(mean, d) + var(d)).
    /// </summary>
    private double CostOf(int samples, double cut)
    {
        var random = new Random(Seed);
        int trials = Math.Clamp(1_000_000 / samples, 10_000, 100_000);
        double[] z = new double[samples],
            sorted = new double[samples];
        double sum = 0;
        for (int trial = 0; trial < trials; trial++)
        {
            for (int i = 0; i < samples; i++)
                z[i] = SensorReader.Deviate(random);
            double mean = z.Average(),
                difference = PartOf(z, sorted, 0, cut).Mean - mean;
            sum += 2 * mean * difference + difference * difference;
        }
        return 1 + samples * sum / trials;
    }

    private static (double Median, double Limit) Limits(double[] samples, double cut)
    {
        Array.Sort(samples);
        int below = (samples.Length - 1) / 2;
        double median = (samples[below] + samples[samples.Length / 2]) / 2;
        return (median, cut * OrderStatistics.MadToSigma * MedianDeviation(samples, median, below));
    }

    /// <summary>
    /// Median distance from the median of sorted samples: the distances grow to both sides, so they are merged.
    /// </summary>
    private static double MedianDeviation(double[] sorted, double median, int below)
    {
        int n = sorted.Length,
            low = below,
            high = below + 1;
        double last = 0,
            before = 0;
        for (int taken = 0; taken <= n / 2; taken++)
        {
            before = last;
            last =
                high >= n || (low >= 0 && median - sorted[low] <= sorted[high] - median)
                    ? median - sorted[low--]
                    : sorted[high++] - median;
        }
        return n % 2 == 1 ? last : (before + last) / 2;
    }

    private static double[][] Deviates(int samples, int pairs)
    {
        var random = new Random(Seed);
        var deviates = new double[2 * pairs][];
        for (int i = 0; i < pairs; i++)
        {
            deviates[2 * i] = [.. Enumerable.Range(0, samples).Select(_ => SensorReader.Deviate(random))];
            deviates[2 * i + 1] = [.. deviates[2 * i].Select(z => -z)];
        }
        return deviates;
    }
}
