namespace SensorProfile.Frames.Sets;

/// <summary>
/// Frames of one night: without a thermometer, frames of two nights may differ by many degrees and must not be pooled.
/// </summary>
internal static class NightSplit
{
    /// <summary>A pause longer than this begins another night.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromHours(6);

    /// <summary>Splits frames at the pauses between them.</summary>
    /// <param name="frames">In order of time. Those without a time belong to the only night there is, or, where there are
    /// several, are kept apart: they may be of any.</param>
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
