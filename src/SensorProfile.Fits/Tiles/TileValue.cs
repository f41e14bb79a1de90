namespace SensorProfile.Fits.Tiles;

/// <summary>A number that is either common to all tiles or taken from a column.</summary>
/// <param name="Column">The column; null when the number is common to all tiles.</param>
/// <param name="Constant">The common number; NaN when there is none.</param>
internal readonly record struct TileValue(TileColumn? Column, double Constant)
{
    /// <summary>Whether a number exists.</summary>
    public bool Exists => Column is not null || !double.IsNaN(Constant);

    /// <summary>The number for one tile; NaN when there is none.</summary>
    public double Of(ReadOnlySpan<byte> row) => Column is null ? Constant : TileTable.Number(row, Column);

    /// <summary>Finds the number: a column takes precedence over a keyword.</summary>
    public static TileValue Read(TileTable table, FitsHeader header, string name) =>
        new(table.Column(name) is { IsDescriptor: false } column ? column : null, header.Number(name) ?? double.NaN);
}
