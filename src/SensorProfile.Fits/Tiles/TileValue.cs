namespace SensorProfile.Fits.Tiles;

/// <summary>A number that is the same for all tiles, or stands in a column.</summary>
/// <param name="Column">The column; null when it is the same for all.</param>
/// <param name="Constant">The number for all; NaN when there is none.</param>
internal readonly record struct TileValue(TileColumn? Column, double Constant)
{
    /// <summary>Whether there is a number at all.</summary>
    public bool Exists => Column is not null || !double.IsNaN(Constant);

    /// <summary>The number for one tile; NaN when there is none.</summary>
    public double Of(ReadOnlySpan<byte> row) => Column is null ? Constant : TileTable.Number(row, Column);

    /// <summary>Finds the number: a column comes before a keyword.</summary>
    public static TileValue Read(TileTable table, FitsHeader header, string name) =>
        new(table.Column(name) is { IsDescriptor: false } column ? column : null, header.Number(name) ?? double.NaN);
}
