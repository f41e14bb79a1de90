using SensorProfile.Pixels.Strips;

namespace SensorProfile.Prediction;

/// <summary>A small frame that is kept in memory.</summary>
internal sealed class FrameInMemory(string name, int width, int height, ushort[] samples) : IFrameSamples
{
    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public int Width => width;

    /// <inheritdoc/>
    public int Height => height;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> destination) =>
        samples.AsSpan(firstRow * width, destination.Length).CopyTo(destination);
}
