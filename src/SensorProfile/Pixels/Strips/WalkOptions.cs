namespace SensorProfile.Pixels.Strips;

/// <summary>How a walk over frames is run; nothing here changes a bit of the result.</summary>
internal sealed record WalkOptions
{
    /// <summary>Most strips worked on at once; at least 1. The processor count when not said.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Stops the walk between two strips.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Told the number of rows just finished, from any thread; null when nobody listens.</summary>
    public Action<int>? RowsDone { get; init; }
}
