using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Combines the spatial splits of the channels into standard deviations with their uncertainty.</summary>
internal static class StructureParts
{
    /// <summary>Means over the channels; periods and lines are left empty.</summary>
    /// <param name="channels">One split per channel.</param>
    /// <param name="factors">Factors from the variances of the splits to the square of the unit, one per
    /// channel.</param>
    /// <param name="unit">Unit of the result.</param> <param name="total">Method by which the total was
    /// measured.</param>
    public static PatternStructure Combine(
        IReadOnlyList<SpatialSplit> channels,
        IReadOnlyList<double> factors,
        string unit,
        string total
    )
    {
        double temporal = channels.Select((s, c) => s.Temporal * factors[c]).Average(),
            pixel = temporal + channels.Select((s, c) => s.Pixel * factors[c]).Average(),
            pixels = channels.Sum(s => (double)s.Rows * s.Columns);
        Measurement Part(Func<SpatialSplit, double> part, double averages, string method) =>
            Deviation(
                channels.Select((s, c) => part(s) * factors[c]).Average(),
                averages < pixels ? pixel / (pixels / averages) : temporal,
                averages,
                unit,
                method
            );
        return new PatternStructure
        {
            Total = Part(s => s.Total, pixels, total),
            Row = Part(
                s => s.Row,
                channels.Sum(s => (double)s.Rows),
                "rows' share of the spatial variance (EMVA 1288)"
            ),
            Column = Part(
                s => s.Column,
                channels.Sum(s => (double)s.Columns),
                "columns' share of the spatial variance (EMVA 1288)"
            ),
            Pixel = Part(s => s.Pixel, pixels, "pixels' share of the spatial variance (EMVA 1288)"),
        };
    }

    /// <summary>
    /// Square root of a variance from n averages, each with the noise of its own pixels: u² = 2/n·(variance + noise)².
    /// </summary>
    private static Measurement Deviation(double variance, double noise, double n, string unit, string method)
    {
        double doubt = Math.Sqrt(2 / n) * (Math.Max(0, variance) + Math.Max(0, noise)),
            value = Math.Sqrt(Math.Max(0, variance));
        return new(value, variance > doubt ? doubt / (2 * value) : Math.Sqrt(doubt), unit, (long)n, method);
    }
}
