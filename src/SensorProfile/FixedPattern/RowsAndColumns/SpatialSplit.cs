namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Spatial variance split into rows, columns and pixels.</summary>
/// <remarks>
/// EMVA Standard 1288, Release 4.0 Linear, from s² (population variance of all pixels), cav (variance of the column
/// averages) and rav (of the row averages) of M rows and N columns: pixel = MN/d·(s² − cav − rav), column = (MN −
/// M)/d·cav − N/d·(s² − rav), row = (MN − N)/d·rav − M/d·(s² − cav), d = MN − M − N. It follows from cav = column +
/// pixel/M, rav = row + pixel/N, s² = row + column + pixel: the three parts add up to s². A part that is absent may
/// come out negative by chance.
/// </remarks>
/// <param name="Total">s².</param>
/// <param name="Row">Variance of the row pattern.</param>
/// <param name="Column">Variance of the column pattern.</param>
/// <param name="Pixel">Variance of single pixels.</param>
/// <param name="Rows">M.</param> <param name="Columns">N.</param>
/// <param name="Temporal">Variance by noise that was taken off the single pixels; what is left carries its scatter.</param>
internal readonly record struct SpatialSplit(
    double Total,
    double Row,
    double Column,
    double Pixel,
    int Rows,
    int Columns,
    double Temporal = 0
)
{
    /// <summary>Splits an image given pixel by pixel, so that it need not exist in memory as such.</summary>
    /// <param name="rows">M, at least 3.</param>
    /// <param name="columns">N, at least 3.</param>
    /// <param name="value">Value at a row and column; called twice for each pixel.</param>
    /// <param name="temporalVariance">Temporal variance left in the values; subtracted.</param>
    public static SpatialSplit Split(int rows, int columns, Func<int, int, double> value, double temporalVariance = 0)
    {
        if (rows < 3 || columns < 3)
            throw new ArgumentException(
                $"{rows} rows and {columns} columns are too few to be told apart; 3 of each are needed.",
                nameof(rows)
            );
        double mean = 0;
        for (int row = 0; row < rows; row++)
        for (int column = 0; column < columns; column++)
            mean += value(row, column);
        mean /= (double)rows * columns;
        double[] byRow = new double[rows],
            byColumn = new double[columns];
        double squares = 0;
        for (int row = 0; row < rows; row++)
        for (int column = 0; column < columns; column++)
        {
            double d = value(row, column) - mean;
            squares += d * d;
            byRow[row] += d / columns;
            byColumn[column] += d / rows;
        }
        double s2 = squares / ((double)rows * columns) - temporalVariance;
        double rav = byRow.Sum(r => r * r) / rows - temporalVariance / columns,
            cav = byColumn.Sum(c => c * c) / columns - temporalVariance / rows;
        double mn = (double)rows * columns,
            d0 = mn - rows - columns;
        return new(
            s2,
            (mn - columns) / d0 * rav - rows / d0 * (s2 - cav),
            (mn - rows) / d0 * cav - columns / d0 * (s2 - rav),
            mn / d0 * (s2 - cav - rav),
            rows,
            columns,
            temporalVariance
        );
    }
}
