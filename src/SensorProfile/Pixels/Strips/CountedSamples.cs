namespace SensorProfile.Pixels.Strips;

/// <summary>A frame that counts the bytes read from it.</summary>
/// <param name="frame">The frame.</param>
/// <param name="tally">Tally to which they are added.</param>
internal sealed class CountedSamples(IFrameSamples frame, ReadByteCounter tally) : IFrameSamples
{
    /// <inheritdoc/>
    public string Name => frame.Name;

    /// <inheritdoc/>
    public int Width => frame.Width;

    /// <inheritdoc/>
    public int Height => frame.Height;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        tally.Add(2L * samples.Length);
        frame.ReadRows(firstRow, samples);
    }

    /// <inheritdoc/>
    public string? Damage()
    {
        tally.Add(2L * Width * Height);
        return frame.Damage();
    }
}
