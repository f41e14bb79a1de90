using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.RawCheck;

/// <summary>
/// Correlation of the temporal noise of neighbouring pixels of one channel; raw pixels have none; in-camera noise
/// reduction or compression leaves some.
/// </summary>
/// <param name="Name">Name of the channel.</param>
/// <param name="AlongRow">Lag (0, 1): next pixel of the channel in the row.</param>
/// <param name="AlongColumn">Lag (1, 0): next pixel of the channel in the column.</param>
/// <param name="Diagonal">Lag (1, 1).</param>
internal sealed record NeighbourCorrelation(
    string Name,
    Measurement AlongRow,
    Measurement AlongColumn,
    Measurement Diagonal
)
{
    private const string Method = "lag correlation of a pair difference";

    /// <summary>
    /// r = mean(e·e′)/mean(e²), where e = d minus its row mean and its column mean, over neighbours that both lie
    /// within the pair's clip; its standard uncertainty is 1/√n.
    /// </summary>
    /// <remarks>
    /// Row and column means are subtracted because row noise would pass for correlation. The subtraction itself leaves
    /// −1/(pixels per line), which is added back.
    /// </remarks>
    /// <param name="a">Frame A of <paramref name="pair"/>.</param>
    /// <param name="b">Frame B of <paramref name="pair"/>.</param>
    /// <param name="pair">Statistics of the pair.</param>
    /// <param name="options">How the walk is run.</param>
    public static IReadOnlyList<NeighbourCorrelation> Measure(
        IFrameSamples a,
        IFrameSamples b,
        PairStatistics pair,
        WalkOptions? options = null
    )
    {
        int channels = pair.Mosaic.Channels;
        var residuals = pair.Channels.Select(channel => new PairResidual(channel)).ToArray();
        var strips = StripWalker.Walk([a, b], strip => LagSums.Sum(strip, pair.Mosaic, residuals), options);
        return
        [
            .. Enumerable
                .Range(0, channels)
                .Select(channel =>
                    Measure(
                        pair.Channels[channel],
                        strips.Select(strip => strip[channel]).Aggregate((sum, next) => sum.Plus(next))
                    )
                ),
        ];
    }

    private static NeighbourCorrelation Measure(PairChannel channel, LagSums sums)
    {
        double variance = sums.Squares / sums.Pixels;
        double rowLoss = 1.0 / channel.A.RowLength,
            columnLoss = 1.0 / channel.A.ColumnLength;
        return new NeighbourCorrelation(
            channel.Name,
            Correlation(sums.AlongRow, sums.RowNeighbours, variance, rowLoss),
            Correlation(sums.AlongColumn, sums.ColumnNeighbours, variance, columnLoss),
            Correlation(sums.Diagonal, sums.DiagonalNeighbours, variance, 0)
        );
    }

    private static Measurement Correlation(double products, long neighbours, double variance, double loss) =>
        neighbours == 0 || !(variance > 0)
            ? new Measurement(double.NaN, double.NaN, "1", neighbours, Method)
            : new Measurement(
                products / neighbours / variance + loss,
                1 / Math.Sqrt(neighbours),
                "1",
                neighbours,
                Method
            );
}
