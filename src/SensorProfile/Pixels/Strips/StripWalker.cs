namespace SensorProfile.Pixels.Strips;

/// <summary>
/// Walks N frames strip by strip: all N samples of a pixel are in memory together, but never N whole frames.
/// </summary>
internal static class StripWalker
{
    // samples of one strip, which then stays in the last-level cache
    private const int StripBytes = 4 << 20;

    // fewer, larger strips when files must be reopened for every strip
    private const int LargeStripBytes = 64 << 20;
    private const long BufferBytes = 128L << 20; // of all strips worked on at once
    private const int MaxRows = 64;

    /// <summary>
    /// Passes every strip to <paramref name="measure"/>, several at once, and returns the results in strip order.
    /// </summary>
    /// <remarks>
    /// The strips depend only on the number and size of the frames, so the results are the same at any thread count.
    /// </remarks>
    public static T[] Walk<T>(IReadOnlyList<IFrameSamples> frames, Func<Strip, T> measure, WalkOptions? options = null)
    {
        var (width, height) = CommonSize(frames);
        int rows = RowsPerStrip(frames.Count, width, height);
        var results = new T[(height + rows - 1) / rows];
        ForEachStrip(frames, rows, options, () => strip => results[strip.FirstRow / rows] = measure(strip));
        return results;
    }

    /// <summary>
    /// Passes every strip to <paramref name="add"/> with a tally owned by one worker; returns the tallies.
    /// </summary>
    /// <remarks>
    /// Which worker gets which strip is up to chance, so tally only what adds up exactly in any order (counts, integer
    /// sums).
    /// </remarks>
    public static IReadOnlyList<TTally> Tally<TTally>(
        IReadOnlyList<IFrameSamples> frames,
        Func<TTally> create,
        Action<Strip, TTally> add,
        WalkOptions? options = null
    )
    {
        var (width, height) = CommonSize(frames);
        var tallies = new List<TTally>();
        ForEachStrip(frames, RowsPerStrip(frames.Count, width, height), options, () =>
        {
            var tally = create();
            lock (tallies)
                tallies.Add(tally);
            return strip => add(strip, tally);
        });
        return tallies;
    }

    private static void ForEachStrip(
        IReadOnlyList<IFrameSamples> frames,
        int rows,
        WalkOptions? options,
        Func<Action<Strip>> createUser
    )
    {
        int width = frames[0].Width,
            height = frames[0].Height;
        Run(
            (height + rows - 1) / rows,
            BufferBytes / (2L * frames.Count * width * rows),
            options ?? new WalkOptions(),
            () =>
            {
                var strip = new Strip(frames.Count, width, rows);
                var use = createUser();
                return index =>
                {
                    strip.Fill(frames, index * rows, Math.Min(rows, height - index * rows));
                    use(strip);
                    return strip.Rows;
                };
            }
        );
    }

    /// <summary>
    /// Runs pieces of work 0 … <paramref name="pieces"/> − 1; every worker gets its own buffers from
    /// <paramref name="createWorker"/>.
    /// </summary>
    internal static void Run(int pieces, long mostWorkers, WalkOptions options, Func<Func<int, int>> createWorker)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Threads, 1);
        int workers = (int)Math.Clamp(Math.Min(mostWorkers, options.Threads), 1, Math.Max(1, pieces));
        int next = -1;
        var parallel = new ParallelOptions
        {
            MaxDegreeOfParallelism = workers,
            CancellationToken = options.Cancellation,
        };
        try
        {
            Parallel.For(0, workers, parallel, (_, state) =>
            {
                var work = createWorker();
                for (int piece; !state.IsExceptional && (piece = Interlocked.Increment(ref next)) < pieces; )
                {
                    options.Cancellation.ThrowIfCancellationRequested();
                    int rows = work(piece);
                    options.RowsDone?.Invoke(rows);
                }
            });
        }
        catch (AggregateException several)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
        }
    }

    internal static (int Width, int Height) CommonSize(IReadOnlyList<IFrameSamples> frames)
    {
        if (frames.Count == 0)
            throw new ArgumentException("No frames were given.", nameof(frames));
        var first = frames[0];
        foreach (var frame in frames)
            if (frame.Width != first.Width || frame.Height != first.Height)
                throw new ArgumentException(
                    $"{frame.Name} is {frame.Width} × {frame.Height} px and {first.Name} is {first.Width} × "
                        + $"{first.Height} px; only frames of one size can be walked together.",
                    nameof(frames)
                );
        return (first.Width, first.Height);
    }

    /// <summary>
    /// Rows per strip; even whenever more than one, so that a strip starts on the first row of the colour filter
    /// pattern.
    /// </summary>
    internal static int RowsPerStrip(int frames, int width, int height)
    {
        int bytes = frames > FrameStack.MaxOpenFiles ? LargeStripBytes : StripBytes;
        long rows = Math.Min(bytes / (2L * frames * width), Math.Min(MaxRows, height));
        return rows < 2 ? 1 : (int)rows & ~1;
    }
}
