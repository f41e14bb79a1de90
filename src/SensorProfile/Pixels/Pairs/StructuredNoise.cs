namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// Temporal noise that all pixels of a row (or of a column) share, from the difference of two frames.
/// </summary>
/// <param name="RowVariance">Variance that the rows of one frame share, ADU²; can come out below 0 when there is
/// none.</param>
/// <param name="ColumnVariance">Variance that the columns share, ADU².</param>
internal sealed record StructuredNoise(Measurement RowVariance, Measurement ColumnVariance)
{
    /// <summary>
    /// ½·[var(line means of d) − s²/pixels per line], s² the variance of d that neither rows nor columns share: what
    /// independent pixels leave in a mean.
    /// </summary>
    /// <remarks>Two-way analysis of variance of d with R rows and C columns: s² = [Σ(d − d̄)² − C·Σ(row mean − d̄)² −
    /// R·Σ(column mean − d̄)²]/((R − 1)(C − 1)), which
    /// makes both results unbiased. No pixel is clipped, because every pixel is in its line's mean: what an outlier
    /// adds to the first term the second takes away in
    /// expectation. Standard uncertainty ½·var(line means)·√(2/(lines − 1)), normal noise assumed.</remarks>
    /// <param name="channel">One channel of a pair, at least 2 × 2 pixels; smaller ones give not a number.</param>
    public static StructuredNoise Measure(PairChannel channel)
    {
        var difference = channel.A.Minus(channel.B);
        double[] rows = difference.RowMeans(),
            columns = difference.ColumnMeans();
        double total = channel.Differences.Variance * channel.Differences.Count;
        double own =
            (total - columns.Length * SumOfSquares(rows) - rows.Length * SumOfSquares(columns))
            / ((rows.Length - 1.0) * (columns.Length - 1.0));
        return new StructuredNoise(
            Excess(rows, own / columns.Length, "temporal row noise of a pair difference"),
            Excess(columns, own / rows.Length, "temporal column noise of a pair difference")
        );
    }

    private static Measurement Excess(double[] means, double expected, string method)
    {
        double variance = SumOfSquares(means) / (means.Length - 1);
        return new Measurement(
            (variance - expected) / 2,
            variance / 2 * Math.Sqrt(2.0 / (means.Length - 1)),
            "ADU²",
            means.Length,
            method
        );
    }

    private static double SumOfSquares(double[] values)
    {
        double mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean));
    }
}
