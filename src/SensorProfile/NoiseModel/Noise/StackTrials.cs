using System.Collections.Concurrent;
using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Stacks of normal samples in which some of the k pixels stand out, simulated one by one.</summary>
internal sealed class StackTrials
{
    private const int Seed = 7411;
    private static readonly ConcurrentDictionary<int, Lazy<double[][]>> drawn = [];

    private readonly int outliers;
    private readonly Lazy<double[][]> sortedOthers;

    /// <param name="samples">M.</param>
    /// <param name="positions">k.</param>
    /// <param name="cut">Limit of the rejection, in standard deviations from the MAD.</param>
    /// <param name="method">How outliers are rejected.</param>
    /// <param name="outliers">How many of the k stand out.</param>
    internal StackTrials(int samples, int positions, double cut, Rejection method, int outliers)
    {
        (Samples, Positions, Cut, Method, this.outliers) = (samples, positions, cut, method, outliers);
        sortedOthers = new(() => [.. Deviates.Select(SortedOthers)]);
    }

    internal int Samples { get; }

    internal int Positions { get; }

    internal double Cut { get; }

    internal Rejection Method { get; }

    /// <summary>Normal samples of every trial; every second trial is the one before with all signs reversed.</summary>
    internal double[][] Deviates =>
        drawn.GetOrAdd(Samples, n => new(() => Drawn(n, Math.Clamp(40_000 / n, 300, 2000)))).Value;

    /// <summary>What the stack keeps in every trial.</summary>
    /// <param name="excess">Mean of the odd pixels, in the standard deviation of the others.</param>
    /// <param name="spread">Standard deviation of their samples, in that of the others.</param>
    internal Part[] Parts(double excess, double spread)
    {
        double[] samples = new double[Samples],
            sorted = new double[Samples];
        double[][] deviates = Deviates,
            usual = sortedOthers.Value;
        var parts = new Part[deviates.Length];
        Span<double> own = stackalloc double[Samples];
        for (int trial = 0; trial < parts.Length; trial++)
        {
            double[] z = deviates[trial];
            int odd = OddOf(trial),
                count = 0;
            for (int i = 0; i < z.Length; i++)
            {
                samples[i] = z[i];
                if (IsOdd(i, odd))
                    own[count++] = samples[i] = excess + spread * z[i];
            }
            own[..count].Sort();
            Merge(usual[trial], own[..count], sorted);
            parts[trial] = PartOf(samples, sorted, odd);
        }
        return parts;
    }

    /// <summary>Number of samples of a trial that come from odd pixels.</summary>
    internal int OddSamples(int trial)
    {
        int odd = OddOf(trial),
            count = 0;
        for (int i = 0; i < Samples; i++)
            count += IsOdd(i, odd) ? 1 : 0;
        return count;
    }

    /// <summary>Index of the odd pixel in a trial, or of the first of several.</summary>
    private int OddOf(int trial) => trial / 2 % Positions;

    private bool IsOdd(int sample, int odd) => (sample + Positions - odd) % Positions < outliers;

    /// <summary>
    /// The samples of the usual pixels of a trial, sorted once for all values that the odd ones may take.
    /// </summary>
    private double[] SortedOthers(double[] z, int trial)
    {
        int odd = OddOf(trial);
        double[] others = [.. z.Where((_, i) => !IsOdd(i, odd))];
        Array.Sort(others);
        return others;
    }

    private static void Merge(ReadOnlySpan<double> usual, ReadOnlySpan<double> own, Span<double> sorted)
    {
        int u = 0,
            o = 0;
        for (int i = 0; i < sorted.Length; i++)
            sorted[i] = o == own.Length || (u < usual.Length && usual[u] <= own[o]) ? usual[u++] : own[o++];
    }

    /// <summary>Result of the stack for one trial.</summary>
    private Part PartOf(double[] samples, double[] sorted, int odd)
    {
        if (Method == Rejection.Median)
            return new Part((sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2, 0, 0);
        (double median, double limit) = Limits(sorted, Cut);
        double all = 0,
            own = 0;
        if (Method == Rejection.Winsorised)
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
            if (!IsOdd(i, odd))
                continue;
            own += samples[i];
            ownKept++;
        }
        return kept == 0 ? new Part(median, 0, 0) : new Part(all / kept, own / kept, ownKept);
    }

    /// <summary>
    /// A clipped mean, the contribution of one pixel's samples to it, and how many of them were kept.
    /// </summary>
    internal readonly record struct Part(double Mean, double Own, int Kept);

    /// <summary>
    /// Variance of the stack of normal samples over that of their plain mean, by the difference d between both, since the
    /// variance of the mean is known: M·(1/M + 2·cov(mean, d) + var(d)).
    /// </summary>
    internal double CostOf()
    {
        var random = new Random(Seed);
        int trials = Math.Clamp(1_000_000 / Samples, 10_000, 100_000);
        double[] z = new double[Samples],
            sorted = new double[Samples];
        double sum = 0;
        for (int trial = 0; trial < trials; trial++)
        {
            for (int i = 0; i < Samples; i++)
                z[i] = SensorReader.Deviate(random);
            z.CopyTo(sorted, 0);
            Array.Sort(sorted);
            double mean = z.Average(),
                difference = PartOf(z, sorted, 0).Mean - mean;
            sum += 2 * mean * difference + difference * difference;
        }
        return 1 + Samples * sum / trials;
    }

    private static (double Median, double Limit) Limits(double[] sorted, double cut)
    {
        int below = (sorted.Length - 1) / 2;
        double median = (sorted[below] + sorted[sorted.Length / 2]) / 2;
        return (median, cut * OrderStatistics.MadToSigma * MedianDeviation(sorted, median, below));
    }

    /// <summary>
    /// Median distance from the median of sorted samples (MAD): distances grow towards both ends, so the two sides are
    /// merged.
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

    private static double[][] Drawn(int samples, int pairs)
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
