namespace SensorProfile.Raw;

/// <summary>
/// The black level in linear codes, as stated by a DNG: a small repeating pattern plus column and row offsets.
/// </summary>
/// <remarks>black(r, c) = Pattern[r mod R, c mod C] + ColumnOffsets[c] + RowOffsets[r] with r, c within the active area
/// (DNG specification, BlackLevel, BlackLevelRepeatDim, BlackLevelDeltaH, BlackLevelDeltaV).</remarks>
public sealed record RawBlackLevel
{
    /// <summary>R: rows after which the pattern repeats.</summary>
    public required int PatternRows { get; init; }

    /// <summary>C: columns after which the pattern repeats.</summary>
    public required int PatternColumns { get; init; }

    /// <summary>R × C levels, row by row, codes.</summary>
    public required IReadOnlyList<double> Pattern { get; init; }

    /// <summary>One offset per column of the active area, codes; null when the file has none.</summary>
    internal IReadOnlyList<double>? ColumnOffsets { get; init; }

    /// <summary>One offset per row of the active area, codes; null when the file has none.</summary>
    internal IReadOnlyList<double>? RowOffsets { get; init; }

    /// <summary>The black level of one pixel of the active area, codes.</summary>
    /// <param name="row">Row of the active area, from 0.</param>
    /// <param name="column">Column of the active area, from 0.</param>
    internal double At(int row, int column) =>
        Pattern[(row % PatternRows * PatternColumns) + (column % PatternColumns)]
        + (ColumnOffsets?[column] ?? 0)
        + (RowOffsets?[row] ?? 0);
}
