using SensorProfile.Pixels.Strips;

namespace SensorProfile.Screening;

/// <summary>Runs the walks over pixels and tells the listener how far they are.</summary>
internal sealed class StageProgress(
    IProgress<CharacterisationProgress>? progress,
    int threads,
    CancellationToken cancellation,
    StageClock? clock = null
)
{
    private long bytes;

    /// <summary>Threads to use.</summary>
    public int Threads { get; } = threads;

    /// <summary>Stops the work between two strips.</summary>
    public CancellationToken Cancellation { get; } = cancellation;

    /// <summary>Options for a walk by all threads.</summary>
    public WalkOptions Walk => new() { Threads = Threads, Cancellation = Cancellation };

    /// <summary>Options for a walk that is one of several at once.</summary>
    public WalkOptions SingleThread => new() { Threads = 1, Cancellation = Cancellation };

    /// <summary>
    /// Does the work for every item, several at once, and returns the results in the order of the items.
    /// </summary>
    /// <param name="stage">What is being done.</param>
    /// <param name="items">The items.</param>
    /// <param name="framesPerItem">Frames that one item reads.</param>
    /// <param name="bytesPerFrame">Pixel data of a frame, bytes.</param>
    /// <param name="work">The work; must not depend on the order.</param>
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

    /// <summary>From here on the work belongs to another stage; several kinds of progress may be told within one.</summary>
    public void Stage(string name) => clock?.Begin(name);

    /// <summary>Tells the listener.</summary>
    public void Report(string stage, int framesDone, int framesTotal, long newBytes) =>
        progress?.Report(new(stage, framesDone, framesTotal, Interlocked.Add(ref bytes, newBytes)));
}
