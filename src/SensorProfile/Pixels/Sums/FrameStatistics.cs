using SensorProfile.Pixels.Strips;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Everything about one frame that needs a single pass: exact histograms, row sums and column sums of every channel.
/// </summary>
/// <param name="Name">Name of the frame.</param>
/// <param name="Mosaic">Which pixels share a channel.</param>
/// <param name="Channels">One entry per channel, in the order of the mosaic.</param>
internal sealed record FrameStatistics(string Name, ColourMosaic Mosaic, IReadOnlyList<ChannelStatistics> Channels)
{
    private const int Codes = 1 << 16;

    /// <summary>Histogram of all channels together.</summary>
    public IntegerHistogram AllCodes() =>
        Channels.Count == 1 ? Channels[0].Codes : IntegerHistogram.Merge(Channels.Select(channel => channel.Codes));

    /// <summary>Mean of each row of the frame, all channels together, ADU.</summary>
    public double[] RowMeans()
    {
        int period = Mosaic.Period,
            height = Enumerable.Range(0, period).Sum(row => Channels[row * period].Lines.ColumnLength);
        var means = new double[height];
        for (int row = 0; row < height; row++)
        {
            var channels = Enumerable
                .Range(0, period)
                .Select(column => Channels[Mosaic.Channel(row, column)].Lines)
                .Where(lines => lines.RowLength > 0);
            means[row] =
                (double)channels.Sum(lines => lines.Rows[row / period]) / channels.Sum(lines => lines.RowLength);
        }
        return means;
    }

    /// <summary>Reads a frame once and measures it.</summary>
    public static FrameStatistics Measure(IFrameSamples frame, ColourMosaic mosaic, WalkOptions? options = null)
    {
        var tallies = StripWalker.Tally(
            [frame],
            () => (Counts: new PositionCounts(0, Codes), Lines: new LineSumsTally(frame.Width)),
            (strip, tally) =>
            {
                for (int row = 0; row < strip.Rows; row++)
                {
                    tally.Counts.Add(strip.FirstRow + row, strip.Row(0, row));
                    tally.Lines.Add(strip.FirstRow + row, strip.Row(0, row));
                }
            },
            options
        );
        var codes = PositionCounts.Merge([.. tallies.Select(tally => tally.Counts)], mosaic, 0, Codes);
        var lines = LineSumsTally.Merge(tallies.Select(tally => tally.Lines), mosaic, frame.Width, frame.Height);
        return new FrameStatistics(
            frame.Name,
            mosaic,
            [
                .. codes.Select(
                    (histogram, channel) => new ChannelStatistics(mosaic.Names[channel], histogram, lines[channel])
                ),
            ]
        );
    }
}
