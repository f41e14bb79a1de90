using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Temporal noise of masked pixels from two frames taken under the same conditions.</summary>
/// <param name="Pixel">Variance of single pixels, without row noise, ADU².</param>
/// <param name="PixelUncertainty">Its standard uncertainty, ADU².</param>
/// <param name="Row">Variance of the row noise, ADU²; may come out negative.</param>
/// <param name="RowUncertainty">Its standard uncertainty, ADU².</param>
internal readonly record struct MaskedPair(double Pixel, double PixelUncertainty, double Row, double RowUncertainty)
{
    private const double Clip = 8; // robust standard deviations

    /// <summary>One-way analysis of variance of d = A − B with R rows of C pixels.</summary>
    /// <remarks>
    /// s² = Σ(d − row mean)²/(n − R); pixel variance ½s², standard uncertainty ½s²·√(2/(n − R)); row variance ½[var(row
    /// means) − s²/C], standard uncertainty ½·var(row means)·√(2/(R − 1)) (EMVA Standard 1288, Release 4.0 Linear, for
    /// the pair; normal noise). The fixed pattern and a common shift of the level cancel. Differences beyond 8 robust
    /// standard deviations (particle hits, telegraph pixels) are left out; normal noise has none.
    /// </remarks>
    /// <param name="a">Pixels of the first frame, row by row.</param>
    /// <param name="b">Pixels of the second frame, row by row.</param>
    /// <param name="columns">C, at least 2.</param>
    public static MaskedPair Measure(ReadOnlySpan<ushort> a, ReadOnlySpan<ushort> b, int columns)
    {
        int rows = a.Length / columns;
        var difference = new double[a.Length];
        for (int i = 0; i < a.Length; i++)
            difference[i] = a[i] - b[i];
        double middle = OrderStatistics.Median(difference),
            most = Clip * Math.Max(OrderStatistics.MadSigma(difference), 1);
        var means = new double[rows];
        double sum = 0;
        long used = 0;
        for (int row = 0; row < rows; row++)
        {
            double[] inRow =
            [
                .. difference.AsSpan(row * columns, columns).ToArray().Where(d => Math.Abs(d - middle) <= most),
            ];
            means[row] = inRow.Length > 0 ? inRow.Average() : middle;
            double mean = means[row];
            sum += inRow.Sum(d => (d - mean) * (d - mean));
            used += inRow.Length;
        }
        double freedom = Math.Max(1, used - rows),
            own = sum / freedom,
            center = means.Average(),
            between = means.Sum(m => (m - center) * (m - center)) / (rows - 1);
        return new(
            own / 2,
            own / 2 * Math.Sqrt(2 / freedom),
            (between - (own / columns)) / 2,
            between / 2 * Math.Sqrt(2.0 / (rows - 1))
        );
    }
}
