using System.Buffers;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>
/// The pixels of the thermometer: hot, steady and linear ones, and ordinary ones in the same rows for the level.
/// </summary>
internal sealed class ThermometerPixels
{
    // with these, a set of ten 300 s frames gives its temperature to a few thousandths of a degree (24 Mpixel,
    // simulated)
    private const int MaxRows = 256,
        EnoughPixels = 50_000;
    private const int MinPixels = 5;

    private readonly int[] rows;
    private readonly (int Row, int Column)[] hot; // row: index in rows
    private readonly bool[][] ordinary;
    private readonly PatternInput input;

    private ThermometerPixels(PatternInput input, int[] rows, (int, int)[] hot, bool[][] ordinary) =>
        (this.input, this.rows, this.hot, this.ordinary) = (input, rows, hot, ordinary);

    /// <summary>Number of hot pixels.</summary>
    public int Count => hot.Length;

    /// <summary>Index of each hot pixel in the frame.</summary>
    public IEnumerable<int> Indices => hot.Select(h => rows[h.Row] * input.Width + h.Column);

    /// <summary>
    /// Chooses the rows with the most hot-pixel signal, so that frames need not be read whole; null with too few hot
    /// pixels.
    /// </summary>
    public static ThermometerPixels? Choose(PatternInput input, RateMaps maps, DefectMap defects)
    {
        // Pixels may scatter because the temperature did; flickering ones are recognised later by their residuals.
        bool Serves(int i) => (defects.Classes[i] & ~DefectClass.Flickering) == DefectClass.Hot;
        double[] light = new double[input.Height];
        int[] pixels = new int[input.Height];
        for (int i = 0; i < maps.Rate.Length; i++)
        {
            if (!Serves(i))
                continue;
            light[i / input.Width] += maps.Rate[i];
            pixels[i / input.Width]++;
        }
        List<int> rows = [];
        int chosen = 0;
        foreach (
            int row in Enumerable
                .Range(0, input.Height)
                .Where(r => light[r] > 0)
                .OrderByDescending(r => light[r])
                .Take(MaxRows)
        )
        {
            if (chosen >= EnoughPixels)
                break;
            rows.Add(row);
            chosen += pixels[row];
        }
        rows.Sort();
        (int, int)[] hot =
        [
            .. rows.SelectMany(
                (row, k) =>
                    Enumerable
                        .Range(0, input.Width)
                        .Where(column => Serves(row * input.Width + column))
                        .Select(column => (k, column))
            ),
        ];
        bool[][] ordinary =
        [
            .. rows.Select(row =>
                Enumerable
                    .Range(0, input.Width)
                    .Select(column => maps.Flags[row * input.Width + column] == PixelFlags.None)
                    .ToArray()
            ),
        ];
        return hot.Length < MinPixels ? null : new(input, [.. rows], hot, ordinary);
    }

    /// <summary>
    /// Signal of each hot pixel in a frame above the mean of the ordinary pixels of its channel in the same rows, e-.
    /// </summary>
    public double[] Signals(IFrameSamples frame)
    {
        // hundreds of frames: a new buffer for each would fill the memory
        ushort[] samples = ArrayPool<ushort>.Shared.Rent(rows.Length * input.Width);
        try
        {
            for (int k = 0; k < rows.Length; k++)
                frame.ReadRows(rows[k], samples.AsSpan(k * input.Width, input.Width));
            return Above(i => samples[i]);
        }
        finally
        {
            ArrayPool<ushort>.Shared.Return(samples);
        }
    }

    /// <summary>The same from a mean frame.</summary>
    public double[] Signals(float[] map) => Above(i => map[rows[i / input.Width] * input.Width + i % input.Width]);

    private double[] Above(Func<int, double> value)
    {
        double[] sums = new double[input.Mosaic.Channels];
        long[] counts = new long[sums.Length];
        for (int k = 0; k < rows.Length; k++)
        for (int column = 0; column < input.Width; column++)
            if (ordinary[k][column])
            {
                int channel = input.Mosaic.Channel(rows[k], column);
                sums[channel] += value(k * input.Width + column);
                counts[channel]++;
            }
        return
        [
            .. hot.Select(h =>
            {
                int channel = input.Mosaic.Channel(rows[h.Row], h.Column);
                return (value(h.Row * input.Width + h.Column) - sums[channel] / Math.Max(1, counts[channel]))
                    * input.Gains[channel];
            }),
        ];
    }
}
