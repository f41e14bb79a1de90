namespace SensorProfile.Simulation.Sensors;

/// <summary>A sparse subset of pixels, indexed by row.</summary>
/// <typeparam name="T">What is known of each.</typeparam>
internal sealed class SparsePixels<T>
{
    private readonly T[] _items;
    private readonly int[] _starts;

    /// <summary>Takes pixels that stand in order of position.</summary>
    public SparsePixels(T[] items, Func<T, int> indexOf, int width, int height)
    {
        _items = items;
        _starts = new int[height + 1];
        foreach (T item in items)
        {
            _starts[indexOf(item) / width + 1]++;
        }
        for (int row = 0; row < height; row++)
        {
            _starts[row + 1] += _starts[row];
        }
    }

    /// <summary>All of them.</summary>
    public ReadOnlySpan<T> All => _items;

    /// <summary>Number of the first pixel of a row within <see cref="All"/>.</summary>
    public int FirstOf(int row) => _starts[row];

    /// <summary>Those of one row.</summary>
    public ReadOnlySpan<T> InRow(int row) => _items.AsSpan(_starts[row], _starts[row + 1] - _starts[row]);
}
