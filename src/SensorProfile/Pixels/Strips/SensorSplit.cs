using SensorProfile.Raw;

namespace SensorProfile.Pixels.Strips;

/// <summary>Splits rows of all stored samples into the active area and the masked area.</summary>
/// <param name="width">Number of stored columns.</param>
/// <param name="sensor">The active area.</param>
/// <param name="masked">The masked area; null for none.</param>
/// <param name="rowsAtOnce">Most rows taken at once.</param>
internal sealed class SensorSplit(int width, RawArea sensor, MaskedArea? masked, int rowsAtOnce)
{
    private readonly ushort[] active = new ushort[rowsAtOnce * sensor.Width];
    private readonly ushort[] gathered = new ushort[masked?.Samples ?? 0];
    private int count;

    /// <summary>First row of <see cref="Active"/>, counted from the top of the active area.</summary>
    public int FirstRow { get; private set; }

    /// <summary>The active part of the rows taken last; may be empty.</summary>
    public ReadOnlySpan<ushort> Active => active.AsSpan(0, count * sensor.Width);

    /// <summary>The masked area, as far as its rows have been taken.</summary>
    public ReadOnlySpan<ushort> Masked => gathered;

    /// <summary>Takes whole rows of stored samples.</summary>
    /// <param name="first">First row taken.</param>
    /// <param name="stored">Their samples.</param>
    public void Take(int first, ReadOnlySpan<ushort> stored)
    {
        (FirstRow, count) = (Math.Max(0, first - sensor.Top), 0);
        for (int row = first; row < first + (stored.Length / width); row++)
        {
            ReadOnlySpan<ushort> whole = stored.Slice((row - first) * width, width);
            if (row >= sensor.Top && row < sensor.Bottom)
                whole.Slice(sensor.Left, sensor.Width).CopyTo(active.AsSpan(count++ * sensor.Width));
            if (masked is not null && row >= masked.Top && row < masked.Top + masked.Height)
                whole.Slice(masked.Left, masked.Width).CopyTo(gathered.AsSpan((row - masked.Top) * masked.Width));
        }
    }
}
