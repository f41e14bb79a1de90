using SensorProfile.Pixels.Strips;

namespace SensorProfile.Screening;

/// <summary>Runs passes over pixels and reports their progress.</summary>
internal sealed class StageProgress(
    IProgress<CharacterisationProgress>? progress,
    int threads,
    CancellationToken cancellation,
    StageClock? clock = null
)
{
    private long bytes;

    /// <summary>Number of threads.</summary>
    public int Threads { get; } = threads;

    /// <summary>Cancels the work between two strips.</summary>
    public CancellationToken Cancellation { get; } = cancellation;

    /// <summary>Options for a pass on all threads.</summary>
    public WalkOptions Walk => new() { Threads = Threads, Cancellation = Cancellation };

    /// <summary>Options for one of several simultaneous passes.</summary>
    public WalkOptions SingleThread => new() { Threads = 1, Cancellation = Cancellation };

    /// <summary>
    /// Processes every item, several in parallel, and returns the results in the order of the items.
    /// </summary>
    /// <param name="stage">Name of the step in progress reports.</param>
    /// <param name="items">The items.</param>
    /// <param name="framesPerItem">Frames read per item.</param>
    /// <param name="bytesPerFrame">Pixel data of a frame, bytes.</param>
    /// <param name="work">The work on one item; must not depend on the order.</param>
    public TResult[] ForEach<TItem, TResult>(
        string stage,
        IReadOnlyList<TItem> items,
        int framesPerItem,
        long bytesPerFrame,
        Func<TItem, TResult> work
    )
    {
        var results = new TResult[items.Count];
        int done = 0;
        Report(stage, 0, items.Count * framesPerItem, 0);
        Parallel.For(
            0,
            items.Count,
            new ParallelOptions { MaxDegreeOfParallelism = Threads, CancellationToken = Cancellation },
            i =>
            {
                results[i] = work(items[i]);
                Report(
                    stage,
                    Interlocked.Increment(ref done) * framesPerItem,
                    items.Count * framesPerItem,
                    framesPerItem * bytesPerFrame
                );
            }
        );
        return results;
    }

    /// <summary>Begins a stage of the clock; several steps may report progress within one stage.</summary>
    public void Stage(string name) => clock?.Begin(name);

    /// <summary>Reports progress.</summary>
    public void Report(string stage, int framesDone, int framesTotal, long newBytes) =>
        progress?.Report(new(stage, framesDone, framesTotal, Interlocked.Add(ref bytes, newBytes)));
}
