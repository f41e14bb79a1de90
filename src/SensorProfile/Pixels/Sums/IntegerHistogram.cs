namespace SensorProfile.Pixels.Sums;

/// <summary>
/// How often each whole number occurs in a sample; everything that does not depend on order can be computed exactly
/// from it.
/// </summary>
internal sealed class IntegerHistogram
{
    private readonly long[] _counts;
    private readonly long[] _upTo; // number of samples below or at each value

    /// <summary>Wraps the counts without copying them.</summary>
    /// <param name="lowest">The value that <c>counts[0]</c> counts.</param>
    /// <param name="counts">Occurrences of lowest, lowest + 1, …</param>
    public IntegerHistogram(int lowest, long[] counts)
    {
        Lowest = lowest;
        _counts = counts;
        _upTo = new long[counts.Length];
        long sum = 0;
        Int128 total = 0,
            squares = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            if (counts[i] != 0)
            {
                long value = lowest + i;
                sum += counts[i];
                total += (Int128)counts[i] * value;
                squares += (Int128)counts[i] * (value * value);
            }
            _upTo[i] = sum;
        }
        (Count, Sum, SumOfSquares) = (sum, total, squares);
    }

    /// <summary>Counts a sample, in any order.</summary>
    public static IntegerHistogram Tally(IEnumerable<int> values)
    {
        int[] all = [.. values];
        int lowest = all.Length == 0 ? 0 : all.Min();
        var counts = new long[all.Length == 0 ? 1 : all.Max() - lowest + 1];
        foreach (int value in all)
            counts[value - lowest]++;
        return new IntegerHistogram(lowest, counts);
    }

    /// <summary>The value of the first bin.</summary>
    public int Lowest { get; }

    /// <summary>The value of the last bin.</summary>
    public int Highest => Lowest + _counts.Length - 1;

    /// <summary>Number of samples, n.</summary>
    public long Count { get; }

    /// <summary>Σx, exact.</summary>
    public Int128 Sum { get; }

    /// <summary>Σx², exact.</summary>
    public Int128 SumOfSquares { get; }

    /// <summary>Occurrences of a value; 0 outside the bins.</summary>
    public long this[int value] => value < Lowest || value > Highest ? 0 : _counts[value - Lowest];

    /// <summary>n, Σx and Σx² without the bins.</summary>
    public SampleSums Sums => new(Count, Sum, SumOfSquares);

    /// <summary>Mean; not a number without samples.</summary>
    public double Mean => Sums.Mean;

    /// <summary>Population variance (divisor n), from exact sums; not a number without samples.</summary>
    public double Variance => Sums.Variance;

    /// <summary>Smallest value that occurs.</summary>
    public int Minimum => Ordered(0);

    /// <summary>Largest value that occurs.</summary>
    public int Maximum => Ordered(Count - 1);

    /// <summary>Median; the mean of the two middle values when n is even.</summary>
    public double Median => Quantile(0.5);

    /// <summary>Share of the sample that has this value.</summary>
    public double ShareAt(int value) => (double)this[value] / Count;

    /// <summary>Samples from <paramref name="low"/> to <paramref name="high"/>, both included.</summary>
    public long CountBetween(int low, int high)
    {
        low = Math.Max(low, Lowest);
        high = Math.Min(high, Highest);
        return low > high ? 0 : _upTo[high - Lowest] - (low == Lowest ? 0 : _upTo[low - Lowest - 1]);
    }

    /// <summary>
    /// Quantile by linear interpolation between order statistics, at position (n − 1)·p counted from 0.
    /// </summary>
    /// <param name="probability">p, 0 … 1.</param>
    public double Quantile(double probability)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        if (Count == 0)
            return double.NaN;
        double place = (Count - 1) * probability;
        long below = Math.Min((long)place, Count - 1);
        int low = Ordered(below),
            high = Ordered(Math.Min(below + 1, Count - 1));
        return low + (place - below) * (high - low);
    }

    /// <summary>Median of |x − median|; multiplied by 1.482602218505602 it estimates σ of a normal sample.</summary>
    public double MedianAbsoluteDeviation =>
        Count == 0 ? double.NaN : (Distance((Count - 1) / 2) + Distance(Count / 2)) / 2;

    /// <summary>Smallest distance from the median within which this share of the sample lies.</summary>
    public double DistanceHolding(double share) =>
        Distance(Math.Clamp((long)Math.Ceiling(share * Count) - 1, 0, Count - 1));

    /// <summary>Combines several histograms.</summary>
    public static IntegerHistogram Merge(IEnumerable<IntegerHistogram> histograms)
    {
        IntegerHistogram[] all = [.. histograms];
        int lowest = all.Min(histogram => histogram.Lowest);
        var counts = new long[all.Max(histogram => histogram.Highest) - lowest + 1];
        foreach (var histogram in all)
            for (int i = 0; i < histogram._counts.Length; i++)
                counts[histogram.Lowest - lowest + i] += histogram._counts[i];
        return new IntegerHistogram(lowest, counts);
    }

    /// <summary>The sample at this position in ascending order, counted from 0.</summary>
    private int Ordered(long place)
    {
        if (Count == 0)
            throw new InvalidOperationException("An empty histogram has no values.");
        // the first bin that reaches the position: empty bins repeat the count of the bin below, so it must be the
        // first
        int low = 0,
            high = _upTo.Length - 1;
        while (low < high)
        {
            int middle = low + (high - low) / 2;
            if (_upTo[middle] > place)
                high = middle;
            else
                low = middle + 1;
        }
        return Lowest + low;
    }

    /// <summary>
    /// |x − median| at this position in ascending order; searched in half units, because the median is a multiple of ½.
    /// </summary>
    private double Distance(long place)
    {
        long twiceMedian = (long)(2 * Median),
            low = 0,
            high = 2L * _counts.Length;
        while (low < high)
        {
            long middle = (low + high) / 2;
            int from = (int)Math.Ceiling((twiceMedian - middle) / 2.0),
                to = (int)Math.Floor((twiceMedian + middle) / 2.0);
            if (CountBetween(from, to) > place)
                high = middle;
            else
                low = middle + 1;
        }
        return low / 2.0;
    }
}
