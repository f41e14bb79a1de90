using System.Runtime.InteropServices;
using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Median rate of every coarse cell, with the noise of these medians.</summary>
/// <param name="Grid">The cells.</param>
/// <param name="Values">Medians, e-/px/s; not a number for a cell with hardly any sound pixels.</param>
/// <param name="Noise">Standard error of the median of one cell, e-/px/s.</param>
internal sealed record CellMedians(CellGrid Grid, double[] Values, double Noise)
{
    private const int MinPixels = 8;

    /// <summary>
    /// Medians over the sound pixels: hot ones hardly shift a median; flagged ones and those in defect lines are left
    /// out.
    /// </summary>
    public static CellMedians Measure(PatternInput input, RateMaps maps, DefectMap defects)
    {
        CellGrid grid = maps.Cells.Grid;
        double[] medians = new double[grid.Count],
            spreads = new double[grid.Count];
        Parallel.For(0, grid.Count, cell =>
        {
            int top = cell / grid.Columns * grid.Size,
                left = cell % grid.Columns * grid.Size;
            var values = new List<double>(grid.Size * grid.Size);
            for (int row = top; row < Math.Min(input.Height, top + grid.Size); row++)
            for (int column = left; column < Math.Min(input.Width, left + grid.Size); column++)
            {
                int at = row * input.Width + column;
                if (
                    (maps.Flags[at] & ~PixelFlags.Outstanding) == PixelFlags.None
                    && !float.IsNaN(maps.Rate[at])
                    && !defects.Classes[at].HasFlag(DefectClass.Line)
                )
                    values.Add(maps.Rate[at]);
            }
            bool enough = values.Count >= Math.Min(MinPixels, grid.Size * grid.Size / 4);
            ReadOnlySpan<double> sound = CollectionsMarshal.AsSpan(values);
            medians[cell] = enough ? OrderStatistics.Median(sound) : double.NaN;
            spreads[cell] = enough
                ? OrderStatistics.MadSigma(sound) * OrderStatistics.MedianToMeanError / Math.Sqrt(values.Count)
                : double.NaN;
        });
        double[] known = [.. spreads.Where(double.IsFinite)];
        return new(grid, medians, known.Length == 0 ? double.NaN : OrderStatistics.Median(known));
    }
}
