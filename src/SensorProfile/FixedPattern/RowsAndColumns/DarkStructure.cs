using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Measures the structure of the level without light, from the mean of the bias frames.</summary>
internal static class DarkStructure
{
    // robust standard deviations: single defects must not look like a row or column
    private const double Clip = 8;
    private const int SampledPixels = 1_000_000;

    /// <summary>Measures split and periods; null when the frames are too small.</summary>
    /// <param name="moments">Mean and temporal variance of every pixel over the bias frames.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="gains">e-/ADU of each channel; null to stay in ADU.</param>
    public static PatternStructure? Measure(PixelMoments moments, ColourMosaic mosaic, IReadOnlyList<double>? gains)
    {
        if (moments.Width < 6 || moments.Height < 6)
            return null;
        SpatialSplit[] channels = [.. Enumerable.Range(0, mosaic.Channels).Select(c => Split(moments, mosaic, c))];
        double[] across = Means(moments, columns: true),
            down = Means(moments, columns: false);
        double[] factors =
        [
            .. Enumerable.Range(0, channels.Length).Select(c => gains is null ? 1 : gains[c] * gains[c]),
        ];
        return StructureParts.Combine(
            channels,
            factors,
            gains is null ? "ADU" : "e-",
            "spatial standard deviation of the mean bias (EMVA 1288)"
        ) with
        {
            Periods =
            [
                .. LineSpectrum.Periods(across, PatternDirection.Across),
                .. LineSpectrum.Periods(down, PatternDirection.Down),
            ],
            Lines =
            [
                .. new[]
                {
                    LineSpectrum.Profile(across, PatternDirection.Across),
                    LineSpectrum.Profile(down, PatternDirection.Down),
                }.OfType<LineProfile>(),
            ],
        };
    }

    private static SpatialSplit Split(PixelMoments moments, ColourMosaic mosaic, int channel)
    {
        int period = mosaic.Period,
            top = channel / period,
            left = channel % period;
        int columns = mosaic.ColumnsOf(channel, moments.Width),
            rows = (moments.Height - top + period - 1) / period;
        int At(int row, int column) => (top + row * period) * moments.Width + left + column * period;
        double variance = 0;
        for (int row = 0; row < rows; row++)
        for (int column = 0; column < columns; column++)
            variance += moments.Variance[At(row, column)];
        double[] sample = Sample(moments.Mean, rows, columns, At);
        double median = OrderStatistics.Median(sample),
            limit = Clip * OrderStatistics.MadSigma(sample);
        if (!(limit > 0))
            limit = double.PositiveInfinity;
        return SpatialSplit.Split(
            rows,
            columns,
            (row, column) => Math.Clamp(moments.Mean[At(row, column)], median - limit, median + limit),
            variance / ((double)rows * columns) / moments.Frames
        );
    }

    /// <summary>The values, or enough evenly spread rows of them to set the limits of the clip.</summary>
    private static double[] Sample(float[] map, int rows, int columns, Func<int, int, int> at)
    {
        int every = Math.Max(1, rows * columns / SampledPixels),
            sampled = (rows + every - 1) / every;
        double[] sample = new double[sampled * columns];
        for (int k = 0; k < sample.Length; k++)
            sample[k] = map[at(k / columns * every, k % columns)];
        return sample;
    }

    private static double[] Means(PixelMoments moments, bool columns)
    {
        double[] sums = new double[columns ? moments.Width : moments.Height];
        for (int i = 0; i < moments.Mean.Length; i++)
            sums[columns ? i % moments.Width : i / moments.Width] += moments.Mean[i];
        int length = columns ? moments.Height : moments.Width;
        return Array.ConvertAll(sums, s => s / length);
    }
}
