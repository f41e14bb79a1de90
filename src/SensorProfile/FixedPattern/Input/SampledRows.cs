using SensorProfile.Pixels.Strips;

namespace SensorProfile.FixedPattern.Input;

/// <summary>
/// A few row pairs spread evenly over a frame, presented as a smaller frame: enough for medians, with a fraction of the
/// reading.
/// </summary>
/// <remarks>Rows are taken in pairs that start on an even row, so that a 2 × 2 colour filter keeps its phase.</remarks>
internal sealed class SampledRows(IFrameSamples frame, int pairs) : IFrameSamples
{
    /// <inheritdoc/>
    public string Name => frame.Name;

    /// <inheritdoc/>
    public int Width => frame.Width;

    /// <inheritdoc/>
    public int Height => 2 * pairs;

    /// <summary>Number of row pairs that contain about this many pixels; at least 1.</summary>
    /// <exception cref="ArgumentException">The frame has a single row.</exception>
    public static int PairsFor(int width, int height, int pixels) =>
        height < 2
            ? throw new ArgumentException("A frame of a single row cannot be sampled.", nameof(height))
            : Math.Clamp(pixels / (2 * width), 1, height / 2);

    /// <summary>Row of the frame that corresponds to a sampled row.</summary>
    public static int RowOf(int sampled, int pairs, int height) =>
        2 * (int)((long)(sampled / 2) * (height / 2) / pairs) + sampled % 2;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        for (int row = 0; row < samples.Length / Width; row++)
            frame.ReadRows(RowOf(firstRow + row, pairs, frame.Height), samples.Slice(row * Width, Width));
    }
}
