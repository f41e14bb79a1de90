namespace SensorProfile.Pixels;

/// <summary>A window of a frame as a smaller frame.</summary>
/// <param name="frame">The frame.</param> <param name="left">First column of the window, 0-based; even, so that a 2 × 2 colour filter keeps its phase.</param>
/// <param name="top">First row, 0-based; even.</param> <param name="width">Width, px.</param> <param name="height">Height, px.</param>
internal sealed class WindowSamples(IFrameSamples frame, int left, int top, int width, int height) : IFrameSamples
{
    /// <inheritdoc/>
    public string Name => frame.Name;

    /// <inheritdoc/>
    public int Width => width;

    /// <inheritdoc/>
    public int Height => height;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        int rows = samples.Length / width;
        var whole = new ushort[rows * frame.Width];
        frame.ReadRows(top + firstRow, whole);
        for (int row = 0; row < rows; row++) whole.AsSpan(row * frame.Width + left, width).CopyTo(samples.Slice(row * width, width));
    }
}
