namespace SensorProfile.Frames;

/// <summary>Orders frames by time, those without a time last, then by name.</summary>
internal sealed class FrameOrder : IComparer<Frame>
{
    /// <summary>The only instance.</summary>
    public static FrameOrder ByTimeThenName { get; } = new();

    private FrameOrder() { }

    /// <inheritdoc/>
    public int Compare(Frame? x, Frame? y)
    {
        int byTime = (x!.StartUtc ?? DateTimeOffset.MaxValue).CompareTo(y!.StartUtc ?? DateTimeOffset.MaxValue);
        return byTime != 0 ? byTime : string.CompareOrdinal(x.Name, y.Name);
    }
}
