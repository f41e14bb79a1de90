using SensorProfile.Pixels.Pairs;

namespace SensorProfile.RawCheck;

/// <summary>The difference of a pair without its row and column means, for one channel.</summary>
internal sealed class PairResidual
{
    private readonly double[] _rows;
    private readonly double[] _columns;
    private readonly double _mean;
    private readonly int _lowest,
        _highest;

    public PairResidual(PairChannel channel)
    {
        var difference = channel.A.Minus(channel.B);
        (_rows, _columns) = (difference.RowMeans(), difference.ColumnMeans());
        _mean = channel.Differences.Mean;
        (_lowest, _highest) = (channel.Clipped.Lowest, channel.Clipped.Highest);
    }

    /// <summary>d − row mean − column mean + mean; not a number where d lies outside the pair's clip.</summary>
    public double At(int row, int column, int difference) =>
        difference < _lowest || difference > _highest ? double.NaN : difference - _rows[row] - _columns[column] + _mean;
}
