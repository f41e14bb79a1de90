using SensorProfile.Raw;

namespace SensorProfile.Pixels.Strips;

/// <summary>Walks all stored rows of a raw file once: hands out those that see light and gathers the masked area.</summary>
/// <remarks>Both lie in the same compressed rows, which are decoded only once.</remarks>
internal sealed class SensorRows(RawFile file, MaskedArea? masked)
{
    private const int RowsAtOnce = 64;
    private readonly ushort[] stored = new ushort[RowsAtOnce * file.Mosaic.SensorWidth];
    private readonly ushort[] active = new ushort[RowsAtOnce * file.Mosaic.Width];
    private readonly ushort[] gathered = new ushort[masked?.Samples ?? 0];
    private int next = masked is null ? file.Mosaic.ActiveArea.Top : Math.Min(masked.Top, file.Mosaic.ActiveArea.Top);
    private int count;

    /// <summary>First row of <see cref="Active"/>, of those that see light.</summary>
    public int FirstRow { get; private set; }

    /// <summary>Rows that see light, codes of a curve straightened; can be empty.</summary>
    public ReadOnlySpan<ushort> Active => active.AsSpan(0, count * file.Mosaic.Width);

    /// <summary>The masked area; whole when the walk has ended.</summary>
    public ReadOnlySpan<ushort> Masked => gathered;

    /// <summary>Goes on; false when there is nothing left.</summary>
    public bool Next()
    {
        RawArea area = file.Mosaic.ActiveArea;
        int end = Math.Max(area.Bottom, masked is null ? 0 : masked.Top + masked.Height);
        if (next >= end)
            return false;
        int width = file.Mosaic.SensorWidth,
            rows = Math.Min(RowsAtOnce, end - next);
        Span<ushort> some = stored.AsSpan(0, rows * width);
        file.ReadSensorRows(next, some);
        file.Mosaic.Linearisation?.Apply(some);
        (FirstRow, count) = (Math.Max(0, next - area.Top), 0);
        for (int row = next; row < next + rows; row++)
        {
            ReadOnlySpan<ushort> whole = some.Slice((row - next) * width, width);
            if (row >= area.Top && row < area.Bottom)
                whole.Slice(area.Left, area.Width).CopyTo(active.AsSpan(count++ * area.Width));
            if (masked is not null && row >= masked.Top && row < masked.Top + masked.Height)
                whole.Slice(masked.Left, masked.Width).CopyTo(gathered.AsSpan((row - masked.Top) * masked.Width));
        }
        next += rows;
        return true;
    }
}
