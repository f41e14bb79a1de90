namespace SensorProfile.Pixels;

/// <summary>Temporal noise that all pixels of a row (or of a column) share, from the difference of two frames.</summary>
/// <param name="RowVariance">Variance that the rows of one frame share, ADU²; can come out below 0 when there is none.</param>
/// <param name="ColumnVariance">Variance that the columns share, ADU².</param>
internal sealed record StructuredNoise(Measurement RowVariance, Measurement ColumnVariance)
{
    /// <summary>½·[var(line means of d) − var(d)/pixels per line]: the second term is what independent pixels leave in a mean.</summary>
    /// <remarks>Variances with divisor n − 1. No pixel is clipped, because every pixel is in its line's mean: what an outlier adds to the first term the second takes away
    /// in expectation. Standard uncertainty ½·var(line means)·√(2/(lines − 1)), normal noise assumed.</remarks>
    /// <param name="channel">One channel of a pair.</param>
    public static StructuredNoise Of(PairChannel channel)
    {
        var difference = channel.A.Minus(channel.B);
        double pixelVariance = channel.Differences.Variance * channel.Differences.Count / Math.Max(1, channel.Differences.Count - 1);
        return new StructuredNoise(
            Excess(difference.RowMeans(), pixelVariance / difference.RowLength, "temporal row noise of a pair difference"),
            Excess(difference.ColumnMeans(), pixelVariance / difference.ColumnLength, "temporal column noise of a pair difference"));
    }

    private static Measurement Excess(double[] means, double expected, string method)
    {
        if (means.Length < 2)
            return new Measurement(double.NaN, double.NaN, "ADU²", means.Length, method);
        double mean = means.Average(), variance = means.Sum(value => (value - mean) * (value - mean)) / (means.Length - 1);
        return new Measurement((variance - expected) / 2, variance / 2 * Math.Sqrt(2.0 / (means.Length - 1)), "ADU²", means.Length, method);
    }
}
