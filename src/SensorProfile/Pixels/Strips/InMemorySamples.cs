namespace SensorProfile.Pixels.Strips;

/// <summary>The samples of a frame in memory, row by row.</summary>
internal sealed class InMemorySamples(string name, int width, int height, ReadOnlyMemory<ushort> samples)
    : IFrameSamples
{
    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public int Width => width;

    /// <inheritdoc/>
    public int Height => height;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> target) =>
        samples.Span.Slice(firstRow * width, target.Length).CopyTo(target);
}
