namespace SensorProfile.FixedPattern;

/// <summary>What one strip of rows adds beside the maps.</summary>
internal sealed class StripResult
{
    private readonly int firstRow;

    public StripResult(int firstRow, CellGrid grid, IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures)
    {
        this.firstRow = firstRow;
        Grid = grid;
        Sums = [.. temperatures.Select(t => t.Levels.Frames.Select(_ => new Dictionary<int, double>()).ToArray())];
    }

    /// <summary>The cells.</summary>
    public CellGrid Grid { get; }

    /// <summary>Σ signal of the cells that the strip touches, e-: [temperature][group].</summary>
    public Dictionary<int, double>[][] Sums { get; }

    /// <summary>Pixels added to each cell.</summary>
    public Dictionary<int, long> Counts { get; } = [];

    /// <summary>Laws of single pixels.</summary>
    public List<MeasuredLaw> Laws { get; } = [];

    /// <summary>Cell of a pixel of the strip.</summary>
    public int CellOf(int row, int column) => Grid.Of(column, firstRow + row);

    /// <summary>Adds up the strips in their order, so that the same frames give the same bits.</summary>
    public static CellSignals Merge(StripResult[] strips, CellGrid grid, IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures)
    {
        double[][][] sums = [.. temperatures.Select(t => t.Levels.Frames.Select(_ => new double[grid.Count]).ToArray())];
        long[] counts = new long[grid.Count];
        foreach (StripResult strip in strips)
        {
            for (int t = 0; t < sums.Length; t++)
                for (int g = 0; g < sums[t].Length; g++)
                    foreach ((int cell, double sum) in strip.Sums[t][g]) sums[t][g][cell] += sum;
            foreach ((int cell, long count) in strip.Counts) counts[cell] += count;
        }
        return new(grid, sums, counts);
    }
}
