namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Exact sums of a sample of whole numbers: all that mean and variance need, in a few bytes instead of a histogram.
/// </summary>
/// <param name="Count">Number of samples, n.</param>
/// <param name="Sum">Σx.</param>
/// <param name="SumOfSquares">Σx².</param>
internal readonly record struct SampleSums(long Count, Int128 Sum, Int128 SumOfSquares)
{
    /// <summary>Mean; not a number without samples.</summary>
    public double Mean => Count == 0 ? double.NaN : (double)Sum / Count;

    /// <summary>Population variance (divisor n), from exact sums; not a number without samples.</summary>
    public double Variance =>
        Count == 0 ? double.NaN : (double)(Count * SumOfSquares - Sum * Sum) / ((double)Count * Count);
}
