namespace SensorProfile.Pixels.Sums;

/// <summary>
/// The same few rows of G groups of frames, as exact sums per pixel. Valid only while the function that received it
/// runs.
/// </summary>
internal sealed class GroupStrip
{
    private readonly ushort[][] _first;
    private readonly int[][] _sums;
    private readonly long[][] _squares;
    private readonly int[] _frames;

    // for each group, its frames after the first, one after another
    private readonly ushort[][]? _kept;

    internal GroupStrip(IReadOnlyList<int> framesPerGroup, int width, int mostRows, bool keepSamples = false)
    {
        Width = width;
        _frames = [.. framesPerGroup];
        int pixels = checked(width * mostRows);
        _first = [.. _frames.Select(_ => GC.AllocateUninitializedArray<ushort>(pixels))];
        _sums = [.. _frames.Select(_ => GC.AllocateUninitializedArray<int>(pixels))];
        _squares = [.. _frames.Select(_ => GC.AllocateUninitializedArray<long>(pixels))];
        _kept = keepSamples
            ? [.. _frames.Select(n => GC.AllocateUninitializedArray<ushort>(checked((n - 1) * pixels)))]
            : null;
    }

    /// <summary>Row of the frame at which the strip starts, 0-based.</summary>
    public int FirstRow { get; private set; }

    /// <summary>Number of rows.</summary>
    public int Rows { get; private set; }

    /// <summary>Width of a row, px.</summary>
    public int Width { get; }

    /// <summary>Pixels in the strip.</summary>
    public int Pixels => Rows * Width;

    /// <summary>Number of groups, G.</summary>
    public int Groups => _frames.Length;

    /// <summary>Frames in a group.</summary>
    public int Frames(int group) => _frames[group];

    /// <summary>
    /// Copies the samples of one pixel in one group, in frame order; only available when the walk keeps them.
    /// </summary>
    /// <param name="group">0 … G − 1.</param>
    /// <param name="pixel">Index of the pixel, counted from the first of the strip.</param>
    /// <param name="samples">As many as the group has frames.</param>
    public void CopyPixel(int group, int pixel, Span<ushort> samples)
    {
        samples[0] = _first[group][pixel];
        for (int frame = 1; frame < samples.Length; frame++)
            samples[frame] = _kept![group][(frame - 1) * Pixels + pixel];
    }

    /// <summary>
    /// Mean of every pixel of the strip in one group, ADU, and its temporal variance (divisor N − 1), ADU².
    /// </summary>
    /// <param name="group">0 … G − 1.</param>
    /// <param name="mean">One value per pixel of the strip.</param>
    /// <param name="variance">The same length, or empty when not needed; not a number for a group of one frame.</param>
    public void Moments(int group, Span<float> mean, Span<float> variance) =>
        PixelSums.Moments(First(group), Sums(group), Squares(group), _frames[group], mean, variance);

    /// <summary>Writes the moments of the strip to its place in maps of the whole frame.</summary>
    public void CopyTo(int group, Span<float> meanMap, Span<float> varianceMap) =>
        Moments(
            group,
            meanMap.Slice(FirstRow * Width, Pixels),
            varianceMap.IsEmpty ? [] : varianceMap.Slice(FirstRow * Width, Pixels)
        );

    internal void Begin(int firstRow, int rows)
    {
        FirstRow = firstRow;
        Rows = rows;
    }

    internal Span<ushort> First(int group) => _first[group].AsSpan(0, Pixels);

    /// <summary>Whether the samples are kept.</summary>
    internal bool Keeps => _kept is not null;

    /// <summary>The kept samples of some frames (never the first of the group).</summary>
    internal Span<ushort> Kept(int group, int frame, int count) =>
        _kept![group].AsSpan((frame - 1) * Pixels, count * Pixels);

    internal Span<int> Sums(int group) => _sums[group].AsSpan(0, Pixels);

    internal Span<long> Squares(int group) => _squares[group].AsSpan(0, Pixels);
}
