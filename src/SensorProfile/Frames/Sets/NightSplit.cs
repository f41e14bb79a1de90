namespace SensorProfile.Frames.Sets;

/// <summary>
/// Splits frames by night: without a thermometer, frames of two nights may differ by many degrees and must not be
/// pooled.
/// </summary>
internal static class NightSplit
{
    /// <summary>A pause longer than this starts another night.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromHours(6);

    /// <summary>Splits frames at the pauses between them.</summary>
    /// <param name="frames">Frames ordered by time. Those without a time join the only night; with several nights they
    /// are kept apart, since they may belong to any.</param>
    public static IReadOnlyList<IReadOnlyList<Frame>> Split(IReadOnlyList<Frame> frames)
    {
        List<List<Frame>> nights = [];
        DateTimeOffset? last = null;
        foreach (Frame frame in frames.Where(f => f.StartUtc is not null))
        {
            if (nights.Count == 0 || frame.StartUtc - last > Pause)
                nights.Add([]);
            nights[^1].Add(frame);
            last = frame.StartUtc;
        }
        List<Frame> untimed = [.. frames.Where(f => f.StartUtc is null)];
        if (nights.Count == 1)
            nights[0].AddRange(untimed);
        else if (untimed.Count > 0)
            nights.Add(untimed);
        return nights;
    }
}
