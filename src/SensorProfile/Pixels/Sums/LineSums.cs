namespace SensorProfile.Pixels.Sums;

/// <summary>Exact sums along the rows and the columns of one channel.</summary>
/// <param name="Rows">Sum of each row of the channel, top row of the file first.</param>
/// <param name="Columns">Sum of each column of the channel.</param>
internal sealed record LineSums(long[] Rows, long[] Columns)
{
    /// <summary>Pixels in a row of the channel.</summary>
    public int RowLength => Columns.Length;

    /// <summary>Pixels in a column of the channel.</summary>
    public int ColumnLength => Rows.Length;

    /// <summary>Mean of each row, ADU.</summary>
    public double[] RowMeans() => Array.ConvertAll(Rows, sum => (double)sum / RowLength);

    /// <summary>Mean of each column, ADU.</summary>
    public double[] ColumnMeans() => Array.ConvertAll(Columns, sum => (double)sum / ColumnLength);

    /// <summary>These sums minus others, line by line.</summary>
    public LineSums Minus(LineSums other) =>
        new([.. Rows.Zip(other.Rows, (a, b) => a - b)], [.. Columns.Zip(other.Columns, (a, b) => a - b)]);
}
