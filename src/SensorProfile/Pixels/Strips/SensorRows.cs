using SensorProfile.Raw;

namespace SensorProfile.Pixels.Strips;

/// <summary>Walks all stored rows of a raw file once: hands out those that see light and gathers the masked area.</summary>
/// <remarks>Both lie in the same compressed rows, which are decoded only once.</remarks>
internal sealed class SensorRows(RawFile file, MaskedArea? masked)
{
    private const int RowsAtOnce = 64;
    private readonly ushort[] stored = new ushort[RowsAtOnce * file.Mosaic.SensorWidth];
    private readonly SensorSplit split = new(file.Mosaic.SensorWidth, file.Mosaic.ActiveArea, masked, RowsAtOnce);
    private int next = masked is null ? file.Mosaic.ActiveArea.Top : Math.Min(masked.Top, file.Mosaic.ActiveArea.Top);

    /// <summary>First row of <see cref="Active"/>, of those that see light.</summary>
    public int FirstRow => split.FirstRow;

    /// <summary>Rows that see light, codes of a curve straightened; can be empty.</summary>
    public ReadOnlySpan<ushort> Active => split.Active;

    /// <summary>The masked area; whole when the walk has ended.</summary>
    public ReadOnlySpan<ushort> Masked => split.Masked;

    /// <summary>Goes on; false when there is nothing left.</summary>
    public bool Next()
    {
        int end = Math.Max(file.Mosaic.ActiveArea.Bottom, masked is null ? 0 : masked.Top + masked.Height);
        if (next >= end)
            return false;
        int rows = Math.Min(RowsAtOnce, end - next);
        Span<ushort> some = stored.AsSpan(0, rows * file.Mosaic.SensorWidth);
        file.ReadSensorRows(next, some);
        file.Mosaic.Linearisation?.Apply(some);
        split.Take(next, some);
        next += rows;
        return true;
    }
}
