using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Corrects the smooth part of a map combined from several temperatures to that of the temperature closest to the
/// reference.
/// </summary>
/// <remarks>Ordinary pixels are scaled to the reference by the typical law, which glow does not follow. Cell by cell,
/// the difference between the closest temperature alone and the combined value is added to the ordinary pixels, if it
/// is significant (3 standard errors of the 3 × 3 mean).</remarks>
internal static class LargeScaleCorrection
{
    private const double MinSigmas = 3;

    /// <summary>Corrects the map in place.</summary>
    public static void Correct(
        PatternInput input,
        ReferenceScale scale,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures,
        CellSignals cells,
        float[] rate,
        PixelFlags[] flags
    )
    {
        if (temperatures.Count < 2 || cells.Grid.Count < 16)
            return;
        double[] difference =
        [
            .. Enumerable.Range(0, cells.Grid.Count).Select(cell => Difference(scale, temperatures, cells, cell)),
        ];
        double[] known = [.. difference.Where(double.IsFinite)];
        if (known.Length < 16)
            return;
        double middle = OrderStatistics.Median(known),
            noise = OrderStatistics.MadSigma(known);
        double[] correction =
        [
            .. difference.Select((_, cell) => Significant(cells.Grid, difference, cell, middle, noise)),
        ];
        if (correction.All(c => c == 0))
            return;
        var smooth = new CellInterpolation(cells.Grid, correction, input.Width, input.Height);
        Parallel.For(0, input.Height, row =>
        {
            for (int column = 0, at = row * input.Width; column < input.Width; column++, at++)
                if (!flags[at].HasFlag(PixelFlags.Outstanding))
                    rate[at] += (float)smooth.At(column, row);
        });
    }

    private static double Difference(
        ReferenceScale scale,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures,
        CellSignals cells,
        int cell
    )
    {
        if (cells.Counts[cell] == 0)
            return double.NaN;
        double joined = 0,
            near = 0;
        for (int t = 0; t < temperatures.Count; t++)
        {
            double slope = 0;
            IReadOnlyList<double> factors = temperatures[t].Levels.Slope.Factors;
            for (int g = 0; g < factors.Count; g++)
                slope += factors[g] * cells.Sums[t][g][cell];
            slope *= scale.Factors[t] / cells.Counts[cell];
            joined += scale.Weights[t] * slope;
            if (t == scale.Nearest)
                near = slope;
        }
        return near - joined;
    }

    private static double Significant(CellGrid grid, double[] difference, int cell, double middle, double noise)
    {
        (double value, int n) = grid.Smoothed(difference, cell);
        if (n == 0 || Math.Abs(value - middle) * Math.Sqrt(n) < MinSigmas * noise)
            return 0;
        double own = difference[cell] - middle;
        return Math.Abs(own) > 2 * MinSigmas * noise ? own : value - middle;
    }
}
