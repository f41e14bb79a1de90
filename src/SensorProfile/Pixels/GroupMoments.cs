namespace SensorProfile.Pixels;

/// <summary>Walks several groups of frames at once (one group per exposure, say) and hands out per-pixel moments of every group strip by strip.</summary>
internal static class GroupMoments
{
    private const int FramesPerBatch = 8;
    private const int PixelsPerStrip = 16 << 10;       // a batch of samples and the sums stay in one processor's inner cache
    private const int LargeStrip = 16;                 // times as large when files must be opened anew for every strip
    private const long BufferBytes = 128L << 20;

    /// <summary>Hands the sums of every strip to <paramref name="measure"/>, several strips at once, and returns the results in the order of the strips.</summary>
    /// <remarks>The samples themselves are not kept: memory does not grow with the number of frames.</remarks>
    /// <exception cref="ArgumentException">No group, an empty group, a group of more than 32768 frames, or frames of different sizes.</exception>
    public static T[] Walk<T>(IReadOnlyList<IReadOnlyList<IFrameSamples>> groups, Func<GroupStrip, T> measure, WalkOptions? options = null)
    {
        var (width, height) = Check(groups);
        int rows = RowsPerStrip(groups.Max(group => group.Count), width, height);
        int[] counts = [.. groups.Select(group => group.Count)];
        var results = new T[(height + rows - 1) / rows];
        long workerBytes = (long)width * rows * (14 * groups.Count + 2 * FramesPerBatch);
        StripWalker.Run(results.Length, BufferBytes / workerBytes, options ?? new WalkOptions(), () =>
        {
            var strip = new GroupStrip(counts, width, rows);
            var batch = GC.AllocateUninitializedArray<ushort>(FramesPerBatch * width * rows);
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

    /// <summary>Hands the sums of every strip to <paramref name="use"/>, several strips at once.</summary>
    public static void Walk(IReadOnlyList<IReadOnlyList<IFrameSamples>> groups, Action<GroupStrip> use, WalkOptions? options = null) =>
        Walk(groups, strip => { use(strip); return true; }, options);

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
            for (int k = 0; k < count; k++)
                frames[start + k].ReadRows(strip.FirstRow, batch.AsSpan(k * strip.Pixels, strip.Pixels));
            PixelSums.Accumulate(batch.AsSpan(0, count * strip.Pixels), first, sums, squares);
        }
    }

    private static (int Width, int Height) Check(IReadOnlyList<IReadOnlyList<IFrameSamples>> groups)
    {
        foreach (var group in groups)
            if (group.Count is 0 or > PixelSums.MostFrames)
                throw new ArgumentException($"A group of {group.Count} frames cannot be summed; it must hold 1 to {PixelSums.MostFrames}.", nameof(groups));
        return StripWalker.CommonSize([.. groups.SelectMany(group => group)]);
    }

    private static int RowsPerStrip(int frames, int width, int height) =>
        Math.Clamp((frames > FrameStack.MostOpenFiles ? LargeStrip : 1) * PixelsPerStrip / width, 1, height);
}
