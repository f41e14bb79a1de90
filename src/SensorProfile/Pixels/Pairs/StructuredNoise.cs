namespace SensorProfile.Pixels.Pairs;

/// <summary>Temporal noise shared by all pixels of a row (or of a column), from the difference of two frames.</summary>
/// <param name="RowVariance">Variance of the row noise in one frame, ADU²; may come out negative when there is
/// none.</param>
/// <param name="ColumnVariance">Variance of the column noise, ADU².</param>
internal sealed record StructuredNoise(Measurement RowVariance, Measurement ColumnVariance)
{
    /// <summary>
    /// ½·[var(line means of d) − s²/pixels per line], where s² is the variance of d without row and column noise:
    /// s²/pixels is what independent pixels leave in a line mean.
    /// </summary>
    /// <remarks>Two-way analysis of variance of d with R rows and C columns: s² = [Σ(d − d̄)² − C·Σ(row mean − d̄)² −
    /// R·Σ(column mean − d̄)²]/((R − 1)(C − 1)), which makes both results unbiased. No pixel is clipped, because every
    /// pixel enters its line mean: what an outlier adds to the first term, the second subtracts in expectation.
    /// Standard uncertainty ½·var(line means)·√(2/(lines − 1)), normal noise assumed.</remarks>
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
