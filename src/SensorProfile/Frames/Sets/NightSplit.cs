namespace SensorProfile.Frames.Sets;

/// <summary>
/// Frames of one night: without a thermometer, frames of two nights may differ by many degrees and must not be pooled.
/// </summary>
internal static class NightSplit
{
    /// <summary>A pause longer than this begins another night.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromHours(6);

    /// <summary>Splits frames at the pauses between them.</summary>
    /// <param name="frames">In order of time; those without a time go with the one before.</param>
    public static IReadOnlyList<IReadOnlyList<Frame>> Of(IReadOnlyList<Frame> frames)
    {
        List<List<Frame>> nights = [];
        DateTimeOffset? last = null;
        foreach (Frame frame in frames)
        {
            if (nights.Count == 0 || frame.StartUtc - last > Pause)
                nights.Add([]);
            nights[^1].Add(frame);
            last = frame.StartUtc ?? last;
        }
        return nights;
    }
}
