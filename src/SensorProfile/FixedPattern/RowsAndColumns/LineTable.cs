using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Means of the columns and rows of a map, for each quarter of their length.</summary>
/// <remarks>
/// Values are taken relative to the median of their channel, divided by its scale, and limited to 8 robust standard
/// deviations, so that single defects do not look like a line.
/// </remarks>
internal sealed class LineTable
{
    /// <summary>Number of parts of a line that are kept separate.</summary>
    public const int Quarters = 4;

    private const double Clip = 8;
    private const int SampledPixels = 200_000;
    private readonly double[][] columns,
        rows; // [quarter][line]

    private readonly float[] map;
    private readonly ColourMosaic mosaic;
    private readonly (double Centre, double Limit)[] channels;
    private readonly bool relative;

    private LineTable(
        float[] map,
        int width,
        ColourMosaic mosaic,
        (double Centre, double Limit)[] channels,
        bool relative,
        double[][] columns,
        double[][] rows
    )
    {
        (this.map, Width, Height, this.mosaic, this.channels, this.relative) = (
            map,
            width,
            map.Length / width,
            mosaic,
            channels,
            relative
        );
        (this.columns, this.rows) = (columns, rows);
    }

    /// <summary>px.</summary>
    public int Width { get; }

    /// <summary>px.</summary>
    public int Height { get; }

    /// <summary>Sums a map in one pass.</summary>
    /// <param name="map">Row after row.</param>
    /// <param name="width">px.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="relative">True to divide by the median of the channel.</param>
    public static LineTable Sum(float[] map, int width, ColourMosaic mosaic, bool relative)
    {
        int height = map.Length / width;
        (double Centre, double Limit)[] channels =
        [
            .. Enumerable.Range(0, mosaic.Channels).Select(c => Centre(map, width, mosaic, c)),
        ];
        double[][] columns = [.. Enumerable.Range(0, Quarters).Select(_ => new double[width])],
            rows = [.. Enumerable.Range(0, Quarters).Select(_ => new double[height])];
        for (int row = 0; row < height; row++)
        {
            double[] column = columns[Quarter(row, height)];
            for (int x = 0; x < width; x++)
            {
                (double centre, double limit) = channels[mosaic.Channel(row, x)];
                double value = Math.Clamp(map[row * width + x] - centre, -limit, limit) / (relative ? centre : 1);
                if (double.IsNaN(value))
                    continue;
                column[x] += value;
                rows[Quarter(x, width)][row] += value;
            }
        }
        Divide(columns, height);
        Divide(rows, width);
        return new(map, width, mosaic, channels, relative, columns, rows);
    }

    /// <summary>
    /// How far a line found before stands out: median of a part of it above that of the medians of the 8 lines on
    /// either side, without limiting the values.
    /// </summary>
    public double Excess(bool byRow, int line, int from, int to)
    {
        int lines = byRow ? Height : Width;
        double[] around =
        [
            .. Enumerable
                .Range(line - 8, 17)
                .Where(l => l != line && l >= 0 && l < lines)
                .Select(l => Median(byRow, l, from, to)),
        ];
        return Median(byRow, line, from, to) - OrderStatistics.Median(around);
    }

    private double Median(bool byRow, int line, int from, int to)
    {
        var values = new List<double>(to - from + 1);
        for (int k = from; k <= to; k++)
        {
            (int row, int x) = byRow ? (line, k) : (k, line);
            double centre = channels[mosaic.Channel(row, x)].Centre;
            if (!float.IsNaN(map[row * Width + x]))
                values.Add((map[row * Width + x] - centre) / (relative ? centre : 1));
        }
        return values.Count == 0 ? 0 : OrderStatistics.MedianInPlace([.. values]);
    }

    /// <summary>Means of all columns (or rows) over one part of their length.</summary>
    /// <param name="byRow">True for rows.</param>
    /// <param name="count">1, 2 or 4 parts.</param>
    /// <param name="part">0 … count − 1.</param>
    public double[] Means(bool byRow, int count, int part)
    {
        double[][] quarters = byRow ? rows : columns;
        int each = Quarters / count,
            length = byRow ? Width : Height;
        double[] weights = [.. Enumerable.Range(part * each, each).Select(q => (double)Length(q, length))];
        double total = weights.Sum();
        return
        [
            .. Enumerable
                .Range(0, quarters[0].Length)
                .Select(line => weights.Select((w, k) => w * quarters[part * each + k][line]).Sum() / total),
        ];
    }

    /// <summary>First and last pixel of a part, 0-based.</summary>
    public (int From, int To) Extent(bool byRow, int count, int part)
    {
        int length = byRow ? Width : Height,
            each = Quarters / count;
        return (First(part * each, length), First((part + 1) * each, length) - 1);
    }

    private static int Quarter(int at, int length) => (int)((long)at * Quarters / length);

    private static int First(int quarter, int length) => (int)(((long)quarter * length + Quarters - 1) / Quarters);

    private static int Length(int quarter, int length) => First(quarter + 1, length) - First(quarter, length);

    private static void Divide(double[][] sums, int length)
    {
        for (int q = 0; q < Quarters; q++)
        for (int line = 0; line < sums[q].Length; line++)
            sums[q][line] /= Length(q, length);
    }

    private static (double, double) Centre(float[] map, int width, ColourMosaic mosaic, int channel)
    {
        int period = mosaic.Period,
            height = map.Length / width,
            every = Math.Max(1, (int)((long)map.Length / mosaic.Channels / SampledPixels));
        var values = new List<double>();
        for (int row = channel / period; row < height; row += period * every)
        for (int x = channel % period; x < width; x += period)
            if (!float.IsNaN(map[row * width + x]))
                values.Add(map[row * width + x]);
        double[] all = [.. values];
        double centre = all.Length == 0 ? 0 : OrderStatistics.Median(all),
            limit = all.Length == 0 ? 0 : Clip * OrderStatistics.MadSigma(all);
        return (centre, limit > 0 ? limit : double.PositiveInfinity);
    }
}
