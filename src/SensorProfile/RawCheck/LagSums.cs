using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.RawCheck;

/// <summary>Sums of squares and of products of neighbouring residuals in one channel.</summary>
internal readonly record struct LagSums(
    long Pixels,
    double Squares,
    long RowNeighbours,
    double AlongRow,
    long ColumnNeighbours,
    double AlongColumn,
    long DiagonalNeighbours,
    double Diagonal
)
{
    /// <summary>
    /// Sums of each channel over one strip; neighbours across the edge of a strip are left out, without bias.
    /// </summary>
    public static LagSums[] Sum(Strip strip, ColourMosaic mosaic, PairResidual[] residuals)
    {
        var sums = new LagSums[mosaic.Channels];
        for (int channel = 0; channel < sums.Length; channel++)
        {
            int period = mosaic.Period,
                length = mosaic.ColumnsOf(channel, strip.Width);
            double[] above = [],
                current = new double[length];
            for (int row = 0; row < strip.Rows && length > 0; row++)
            {
                int y = strip.FirstRow + row;
                if (mosaic.Channel(y, 0) / period != channel / period)
                    continue;
                Residuals(strip, row, y / period, channel % period, period, residuals[channel], current);
                sums[channel] = sums[channel].Plus(OfRow(current, above));
                (above, current) = (current, above.Length == 0 ? new double[length] : above);
            }
        }
        return sums;
    }

    /// <summary>The sums of both.</summary>
    public LagSums Plus(LagSums other) =>
        new(
            Pixels + other.Pixels,
            Squares + other.Squares,
            RowNeighbours + other.RowNeighbours,
            AlongRow + other.AlongRow,
            ColumnNeighbours + other.ColumnNeighbours,
            AlongColumn + other.AlongColumn,
            DiagonalNeighbours + other.DiagonalNeighbours,
            Diagonal + other.Diagonal
        );

    private static void Residuals(
        Strip strip,
        int row,
        int channelRow,
        int firstColumn,
        int period,
        PairResidual residual,
        double[] values
    )
    {
        ReadOnlySpan<ushort> a = strip.Row(0, row),
            b = strip.Row(1, row);
        for (int i = 0, x = firstColumn; i < values.Length; i++, x += period)
            values[i] = residual.At(channelRow, i, a[x] - b[x]);
    }

    private static LagSums OfRow(double[] row, double[] above)
    {
        var (pixels, squares) = Products(row, row);
        var (rowCount, alongRow) = Products(row.AsSpan(1), row.AsSpan(0, row.Length - 1));
        if (above.Length == 0)
            return new LagSums(pixels, squares, rowCount, alongRow, 0, 0, 0, 0);
        var (columnCount, alongColumn) = Products(row, above);
        var (diagonalCount, diagonal) = Products(row.AsSpan(1), above.AsSpan(0, above.Length - 1));
        return new LagSums(pixels, squares, rowCount, alongRow, columnCount, alongColumn, diagonalCount, diagonal);
    }

    private static (long Count, double Sum) Products(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        long count = 0;
        double sum = 0;
        for (int i = 0; i < left.Length; i++)
        {
            double product = left[i] * right[i];
            if (double.IsNaN(product))
                continue;
            sum += product;
            count++;
        }
        return (count, sum);
    }
}
