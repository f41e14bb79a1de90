namespace SensorProfile.Pixels.Strips;

/// <summary>How to run a walk over frames; nothing here changes a single bit of the result.</summary>
internal sealed record WalkOptions
{
    /// <summary>Most strips worked on at once; at least 1, by default the processor count.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Stops the walk between two strips.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Receives the number of rows just finished, from any thread; null when not needed.</summary>
    public Action<int>? RowsDone { get; init; }
}
