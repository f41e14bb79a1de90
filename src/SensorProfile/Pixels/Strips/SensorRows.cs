using SensorProfile.Raw;

namespace SensorProfile.Pixels.Strips;

/// <summary>Walks all stored rows of a raw file once: hands out the active rows and collects the masked area.</summary>
/// <remarks>Both are in the same compressed rows, which are decoded only once.</remarks>
internal sealed class SensorRows(RawFile file, MaskedArea? masked)
{
    private const int RowsAtOnce = 64;
    private readonly ushort[] stored = new ushort[RowsAtOnce * file.Mosaic.SensorWidth];
    private readonly SensorSplit split = new(file.Mosaic.SensorWidth, file.Mosaic.ActiveArea, masked, RowsAtOnce);
    private int next = masked is null ? file.Mosaic.ActiveArea.Top : Math.Min(masked.Top, file.Mosaic.ActiveArea.Top);

    /// <summary>First row of <see cref="Active"/>, counted from the top of the active area.</summary>
    public int FirstRow => split.FirstRow;

    /// <summary>Rows of the active area, linearised where the codes follow a curve; may be empty.</summary>
    public ReadOnlySpan<ushort> Active => split.Active;

    /// <summary>The masked area; complete when the walk has ended.</summary>
    public ReadOnlySpan<ushort> Masked => split.Masked;

    /// <summary>Moves on to the next rows; false when none are left.</summary>
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
