using SensorProfile.Pixels.Strips;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Walks several groups of frames at once (for example one group per exposure) and provides per-pixel moments of every
/// group, strip by strip.
/// </summary>
internal static class GroupMoments
{
    private const int FramesPerBatch = 8;

    // a batch of samples and the sums stay in the inner cache of one core
    private const int PixelsPerStrip = 16 << 10;
    private const int LargeStrip = 16; // times as large when files must be reopened for every strip
    private const long BufferBytes = 128L << 20;
    private const long KeptBytes = 32L << 20; // samples of one strip where they are kept

    /// <summary>
    /// Passes the sums of every strip to <paramref name="measure"/>, several strips at once, and returns the results in
    /// strip order.
    /// </summary>
    /// <remarks>Unless asked for, the samples themselves are not kept, so memory does not grow with the number of
    /// frames. If they are kept, strips get fewer rows with more frames, so memory stays bounded all the
    /// same.</remarks>
    /// <param name="groups">The frames.</param>
    /// <param name="measure">Measures one strip.</param>
    /// <param name="options">How the walk is run.</param>
    /// <param name="keepSamples">Whether <see cref="GroupStrip.CopyPixel"/> will be used.</param>
    /// <exception cref="ArgumentException">No group, an empty group, a group of more than 32768 frames, or frames of
    /// different sizes.</exception>
    public static T[] Walk<T>(
        IReadOnlyList<IReadOnlyList<IFrameSamples>> groups,
        Func<GroupStrip, T> measure,
        WalkOptions? options = null,
        bool keepSamples = false
    )
    {
        var (width, height) = Check(groups);
        int rows = RowsPerStrip(groups.Max(group => group.Count), width, height);
        int[] counts = [.. groups.Select(group => group.Count)];
        if (keepSamples)
            rows = (int)Math.Clamp(KeptBytes / (2L * width * counts.Sum()), 1, rows);
        var results = new T[(height + rows - 1) / rows];
        long workerBytes = (long)width * rows * (14 * groups.Count + 2 * (keepSamples ? counts.Sum() : FramesPerBatch));
        StripWalker.Run(results.Length, BufferBytes / workerBytes, options ?? new WalkOptions(), () =>
        {
            var strip = new GroupStrip(counts, width, rows, keepSamples);
            ushort[] batch = keepSamples ? [] : GC.AllocateUninitializedArray<ushort>(FramesPerBatch * width * rows);
            return index =>
            {
                int firstRow = index * rows;
                strip.Begin(firstRow, Math.Min(rows, height - firstRow));
                for (int group = 0; group < groups.Count; group++)
                    Sum(groups[group], strip, group, batch);
                results[index] = measure(strip);
                return strip.Rows;
            };
        });
        return results;
    }

    /// <summary>Passes the sums of every strip to <paramref name="use"/>, several strips at once.</summary>
    public static void Walk(
        IReadOnlyList<IReadOnlyList<IFrameSamples>> groups,
        Action<GroupStrip> use,
        WalkOptions? options = null
    ) =>
        Walk(
            groups,
            strip =>
            {
                use(strip);
                return true;
            },
            options
        );

    private static void Sum(IReadOnlyList<IFrameSamples> frames, GroupStrip strip, int group, ushort[] batch)
    {
        Span<ushort> first = strip.First(group);
        Span<int> sums = strip.Sums(group);
        Span<long> squares = strip.Squares(group);
        frames[0].ReadRows(strip.FirstRow, first);
        sums.Clear();
        squares.Clear();
        for (int start = 1; start < frames.Count; start += FramesPerBatch)
        {
            int count = Math.Min(FramesPerBatch, frames.Count - start);
            Span<ushort> samples = strip.Keeps
                ? strip.Kept(group, start, count)
                : batch.AsSpan(0, count * strip.Pixels);
            for (int k = 0; k < count; k++)
                frames[start + k].ReadRows(strip.FirstRow, samples.Slice(k * strip.Pixels, strip.Pixels));
            PixelSums.Accumulate(samples, first, sums, squares);
        }
    }

    private static (int Width, int Height) Check(IReadOnlyList<IReadOnlyList<IFrameSamples>> groups)
    {
        foreach (var group in groups)
            if (group.Count is 0 or > PixelSums.MaxFrames)
                throw new ArgumentException(
                    $"A group of {group.Count} frames cannot be summed; it must hold 1 to {PixelSums.MaxFrames}.",
                    nameof(groups)
                );
        return StripWalker.CommonSize([.. groups.SelectMany(group => group)]);
    }

    private static int RowsPerStrip(int frames, int width, int height) =>
        Math.Clamp((frames > FrameStack.MaxOpenFiles ? LargeStrip : 1) * PixelsPerStrip / width, 1, height);
}
