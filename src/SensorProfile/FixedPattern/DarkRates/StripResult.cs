using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Results of one strip of rows, besides the maps.</summary>
internal sealed class StripResult
{
    private readonly int firstRow,
        firstCell;

    public StripResult(
        int firstRow,
        int rows,
        CellGrid grid,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures
    )
    {
        this.firstRow = firstRow;
        firstCell = grid.IndexOf(0, firstRow);
        int cells = grid.IndexOf(0, firstRow + rows - 1) - firstCell + grid.Columns;
        Sums = [.. temperatures.Select(t => t.Levels.Frames.Select(_ => new double[cells]).ToArray())];
        Counts = new int[cells];
        Grid = grid;
    }

    /// <summary>The cells.</summary>
    public CellGrid Grid { get; }

    /// <summary>Σ signal of the cells that the strip touches, e-: [temperature][group][cell of the strip].</summary>
    public double[][][] Sums { get; }

    /// <summary>Pixels added to each cell of the strip.</summary>
    public int[] Counts { get; }

    /// <summary>Number of pixels that went to the level test.</summary>
    public int Tested { get; set; }

    /// <summary>Tested pixels with a division into levels that may be better than chance, not yet judged.</summary>
    public List<(int Pixel, TelegraphFit Fit)> Divided { get; } = [];

    /// <summary>Tested pixels that scatter by more than counting statistics explain, not yet judged.</summary>
    public List<(int Pixel, ExcessNoise Noise)> Noisy { get; } = [];

    /// <summary>Scatter of a sample of all pixels, in bins.</summary>
    public int[] ScatterCounts { get; } = ScatterSpread.Counts();

    /// <summary>Laws of single pixels.</summary>
    public List<MeasuredLaw> Laws { get; } = [];

    /// <summary>Pixels that stand out.</summary>
    public List<OutstandingPixel> Outstanding { get; } = [];

    /// <summary>Cell of a pixel of the strip, counted from the first cell of the strip.</summary>
    public int CellOf(int row, int column) => Grid.IndexOf(column, firstRow + row) - firstCell;

    /// <summary>Adds the strips in order, so that the same frames give the same bits.</summary>
    public static CellSignals Merge(
        StripResult[] strips,
        CellGrid grid,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures
    )
    {
        double[][][] sums =
        [
            .. temperatures.Select(t => t.Levels.Frames.Select(_ => new double[grid.Count]).ToArray()),
        ];
        long[] counts = new long[grid.Count];
        foreach (StripResult strip in strips)
        {
            for (int t = 0; t < sums.Length; t++)
            for (int g = 0; g < sums[t].Length; g++)
            for (int cell = 0; cell < strip.Counts.Length; cell++)
                sums[t][g][strip.firstCell + cell] += strip.Sums[t][g][cell];
            for (int cell = 0; cell < strip.Counts.Length; cell++)
                counts[strip.firstCell + cell] += strip.Counts[cell];
        }
        return new(grid, sums, counts);
    }
}
