using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Looks for glow: a smooth excess of the dark rate over the floor common to most of the sensor.</summary>
/// <remarks>
/// Works on medians of coarse cells, smoothed over 3 × 3. The floor is the median of the cells that do not glow, found
/// by leaving out glowing cells and their neighbours until nothing changes. A place glows if it contains a smoothed
/// cell 6 standard errors above the floor, and it extends as far as smoothed cells stay 2 above. An excess that a
/// tilted plane through all cells explains is a gradient of the dark current, not glow. If glow leaves less than a
/// quarter of the sensor for a floor, the darkest quarter is the floor and its own rise is the uncertainty; the
/// brightest place must then exceed the floor by half, or everything is taken for unevenness of the dark current (half
/// more would take some 3.5 °C across the sensor).
/// </remarks>
internal static class GlowSearch
{
    private const double SeedSigmas = 6,
        ReachSigmas = 2;
    private const double BroadSigmas = 10; // times the rise within the darkest quarter
    private const double Uneven = 0.5; // of the floor
    private const int MinCells = 3,
        MaxRounds = 20;

    /// <summary>Searches for glow; null when nothing glows or the frame is too small to tell.</summary>
    public static GlowFinding? Find(PatternInput input, RateMaps maps, DefectMap defects)
    {
        CellMedians cells = CellMedians.Measure(input, maps, defects);
        if (cells.Grid.Count < 16 || !(cells.Noise > 0))
            return null;
        bool[] glows = Glowing(cells, out double floor, out double noise);
        if (!glows.Any(g => g) || IsTilt(cells))
            return null;
        double[] excess = [.. cells.Values.Select((v, i) => Excess(cells, i, floor, noise))];
        IReadOnlyList<int>[] places =
        [
            .. PixelClusters.Find(cells.Grid.Columns, cells.Grid.Rows, i => glows[i], MinCells),
        ];
        if (places.Length == 0)
            return null;
        var inPlace = new bool[cells.Grid.Count];
        foreach (int cell in places.SelectMany(p => p))
            inPlace[cell] = true;
        var field = new GlowField(
            cells.Grid,
            [.. excess.Select((e, i) => inPlace[i] && e > 0 ? e : 0)],
            inPlace,
            input.Width,
            input.Height
        );
        double factor = FloorLaw.Factor(input, maps, inPlace);
        double doubt = Math.Abs(1 - 1 / factor);
        GlowRegion[] regions =
        [
            .. places
                .Select(p =>
                    GlowPlace.Describe(input, maps, cells.Grid, p, excess, inPlace, field, noise, doubt * floor)
                )
                .OrderByDescending(r => r.Peak!.Value),
        ];
        return new(field, regions, factor);
    }

    /// <summary>
    /// The excess of the cell itself if clear of the noise, otherwise of the mean with its neighbours.
    /// </summary>
    private static double Excess(CellMedians cells, int cell, double floor, double noise)
    {
        double own = cells.Values[cell] - floor;
        return own > SeedSigmas * noise ? own : cells.Grid.Smoothed(cells.Values, cell).Value - floor;
    }

    private static bool[] Glowing(CellMedians cells, out double floor, out double noise)
    {
        CellGrid grid = cells.Grid;
        bool[] glows = new bool[grid.Count];
        (floor, noise) = (0, cells.Noise);
        for (int round = 0; round < MaxRounds; round++)
        {
            bool[] leftOut = Dilated(grid, glows);
            double[] rest =
            [
                .. Enumerable
                    .Range(0, grid.Count)
                    .Where(i => !leftOut[i] && double.IsFinite(cells.Values[i]))
                    .Select(i => cells.Values[i]),
            ];
            if (rest.Length < grid.Count / 4)
                return Broad(cells, out floor, out noise);
            floor = OrderStatistics.Median(rest);
            // the spread on the lower side, where there is no glow
            noise = Math.Max(cells.Noise, floor - OrderStatistics.Quantile(rest, 0.1587));
            bool[] next = Reached(cells, floor, noise);
            if (next.AsSpan().SequenceEqual(glows))
                break;
            glows = next;
        }
        return glows;
    }

    /// <summary>Finds glow over most of the sensor, against its darkest quarter.</summary>
    private static bool[] Broad(CellMedians cells, out double floor, out double noise)
    {
        CellGrid grid = cells.Grid;
        double[] known = [.. cells.Values.Where(double.IsFinite)];
        double quarter = OrderStatistics.Quantile(known, 0.25);
        floor = OrderStatistics.Quantile(known, 0.125);
        noise = Math.Max(cells.Noise, (quarter - OrderStatistics.Quantile(known, 0.02)) / 2);
        double brightest = Enumerable
            .Range(0, grid.Count)
            .Select(i => grid.Smoothed(cells.Values, i))
            .Where(s => s.Cells > 0)
            .Max(s => s.Value);
        return brightest - floor > Math.Max(Uneven * floor, BroadSigmas * noise)
            ? Reached(cells, floor, noise)
            : new bool[grid.Count];
    }

    private static bool[] Reached(CellMedians cells, double floor, double noise)
    {
        CellGrid grid = cells.Grid;
        double Significance(int i)
        {
            (double value, int n) = grid.Smoothed(cells.Values, i);
            return n == 0 ? 0 : (value - floor) / noise * Math.Sqrt(n);
        }
        double[] significance = [.. Enumerable.Range(0, grid.Count).Select(Significance)];
        bool[] glows = new bool[grid.Count];
        foreach (
            IReadOnlyList<int> place in PixelClusters.Find(
                grid.Columns,
                grid.Rows,
                i => significance[i] > ReachSigmas,
                MinCells
            )
        )
            if (place.Any(i => significance[i] > SeedSigmas))
                foreach (int i in place)
                    glows[i] = true;
        return glows;
    }

    private static bool[] Dilated(CellGrid grid, bool[] cells) =>
        [
            .. Enumerable
                .Range(0, grid.Count)
                .Select(i =>
                {
                    int row = i / grid.Columns,
                        column = i % grid.Columns;
                    for (int y = Math.Max(0, row - 1); y <= Math.Min(grid.Rows - 1, row + 1); y++)
                    for (int x = Math.Max(0, column - 1); x <= Math.Min(grid.Columns - 1, column + 1); x++)
                        if (cells[y * grid.Columns + x])
                            return true;
                    return false;
                }),
        ];

    /// <summary>Whether a plane through all cells leaves nothing that glows.</summary>
    private static bool IsTilt(CellMedians cells)
    {
        int[] known = [.. Enumerable.Range(0, cells.Grid.Count).Where(i => double.IsFinite(cells.Values[i]))];
        double[] x = [.. known.Select(i => (double)(i % cells.Grid.Columns) / cells.Grid.Columns)],
            y = [.. known.Select(i => (double)(i / cells.Grid.Columns) / cells.Grid.Rows)];
        if (cells.Grid.Columns < 3 || cells.Grid.Rows < 3)
            return false;
        LinearFit plane = LinearLeastSquares.Fit(
            [
                [.. known.Select(_ => 1.0)],
                x,
                y,
            ],
            [.. known.Select(i => cells.Values[i])]
        );
        double[] flat = [.. cells.Values];
        for (int k = 0; k < known.Length; k++)
            flat[known[k]] -= plane.Parameters[1] * x[k] + plane.Parameters[2] * y[k];
        double middle = OrderStatistics.Median([.. known.Select(i => flat[i])]);
        return known.All(i =>
            cells.Grid.Smoothed(flat, i) is var s && (s.Value - middle) * Math.Sqrt(s.Cells) < SeedSigmas * cells.Noise
        );
    }
}
