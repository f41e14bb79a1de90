using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>
/// The usable rows and columns of a masked area: those that stay dark and at the same level as the others.
/// </summary>
/// <param name="Area">The area.</param>
/// <param name="Rows">Usable rows of the area.</param>
/// <param name="Columns">Usable columns of the area.</param>
internal sealed record MaskedPixels(MaskedArea Area, int[] Rows, int[] Columns)
{
    private const double Outlying = 6; // robust standard deviations of the line means
    private const double MaxLight = 0.001; // of the signal of a flat
    private const int MinLines = 8;

    /// <summary>Number of usable pixels.</summary>
    public long Count => (long)Rows.Length * Columns.Length;

    /// <summary>
    /// Chooses them from a bias frame and, if available, the brightest flat: borders may contain dummy pixels at a
    /// level of their own, and pixels that light reaches from the side.
    /// </summary>
    /// <param name="bias">A frame without light.</param>
    /// <param name="flat">The brightest flat; null for none.</param>
    /// <param name="signal">Level of the flat above the bias, ADU.</param>
    /// <returns>Null when fewer than 8 rows or columns are left.</returns>
    public static MaskedPixels? Find(IFrameSamples bias, IFrameSamples? flat, double signal)
    {
        if (bias.Masked is not { } area)
            return null;
        ushort[] dark = Read(bias, area);
        int[] rows = Level(LineMeans(dark, area, byRow: true)),
            columns = Level(LineMeans(dark, area, byRow: false));
        if (flat?.Masked == area)
        {
            ushort[] lit = Read(flat, area);
            rows = [.. rows.Intersect(Dark(dark, lit, area, byRow: true, signal))];
            columns = [.. columns.Intersect(Dark(dark, lit, area, byRow: false, signal))];
        }
        return rows.Length < MinLines || columns.Length < MinLines ? null : new(area, rows, columns);
    }

    /// <summary>Reads the usable pixels, row by row.</summary>
    public ushort[] Read(IFrameSamples frame)
    {
        ushort[] all = Read(frame, Area);
        var chosen = new ushort[Count];
        int i = 0;
        foreach (int row in Rows)
        foreach (int column in Columns)
            chosen[i++] = all[(row * Area.Width) + column];
        return chosen;
    }

    private static ushort[] Read(IFrameSamples frame, MaskedArea area)
    {
        var samples = new ushort[area.Samples];
        frame.ReadMasked(samples);
        return samples;
    }

    private static int[] Level(double[] means)
    {
        double middle = OrderStatistics.Median(means),
            scatter = Math.Max(OrderStatistics.MadSigma(means), 1.0 / 12);
        return [.. Within(means, middle - (Outlying * scatter), middle + (Outlying * scatter))];
    }

    // The darkest tenth is taken as unlit; the level itself may have moved between the frames.
    private static int[] Dark(ushort[] dark, ushort[] lit, MaskedArea area, bool byRow, double signal)
    {
        double[] rise =
        [
            .. LineMeans(lit, area, byRow).Zip(LineMeans(dark, area, byRow), (light, none) => light - none),
        ];
        double least = OrderStatistics.Quantile(rise, 0.1),
            below = OrderStatistics.Median([.. rise.Where(r => r <= OrderStatistics.Median(rise))]),
            scatter = Math.Max(below - least, 0.01);
        return [.. Within(rise, double.NegativeInfinity, least + (Outlying * scatter) + (MaxLight * signal))];
    }

    private static IEnumerable<int> Within(double[] values, double least, double most) =>
        Enumerable.Range(0, values.Length).Where(i => values[i] >= least && values[i] <= most);

    private static double[] LineMeans(ushort[] samples, MaskedArea area, bool byRow)
    {
        var sums = new long[byRow ? area.Height : area.Width];
        for (int i = 0; i < samples.Length; i++)
            sums[byRow ? i / area.Width : i % area.Width] += samples[i];
        double perLine = byRow ? area.Width : area.Height;
        return [.. sums.Select(sum => sum / perLine)];
    }
}
