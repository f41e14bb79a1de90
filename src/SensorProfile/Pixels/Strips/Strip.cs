namespace SensorProfile.Pixels.Strips;

/// <summary>
/// The same few rows of N frames, in memory together. Valid only while the function that received it runs.
/// </summary>
internal sealed class Strip
{
    private readonly ushort[] _samples;

    internal Strip(int frames, int width, int mostRows)
    {
        Frames = frames;
        Width = width;
        _samples = GC.AllocateUninitializedArray<ushort>(checked(frames * width * mostRows));
    }

    /// <summary>Row of the frame at which the strip starts, 0-based.</summary>
    public int FirstRow { get; private set; }

    /// <summary>Number of rows.</summary>
    public int Rows { get; private set; }

    /// <summary>Width of a row, px.</summary>
    public int Width { get; }

    /// <summary>Number of frames, N.</summary>
    public int Frames { get; }

    /// <summary>Pixels in the strip: <see cref="Rows"/> × <see cref="Width"/>.</summary>
    public int Pixels => Rows * Width;

    /// <summary>All samples of one frame in this strip, row by row.</summary>
    public ReadOnlySpan<ushort> Samples(int frame) => _samples.AsSpan(frame * Pixels, Pixels);

    /// <summary>One row of one frame; <paramref name="row"/> counts from the first row of the strip.</summary>
    public ReadOnlySpan<ushort> Row(int frame, int row) => Samples(frame).Slice(row * Width, Width);

    internal void Fill(IReadOnlyList<IFrameSamples> frames, int firstRow, int rows)
    {
        FirstRow = firstRow;
        Rows = rows;
        for (int frame = 0; frame < frames.Count; frame++)
            frames[frame].ReadRows(firstRow, _samples.AsSpan(frame * Pixels, Pixels));
    }
}
