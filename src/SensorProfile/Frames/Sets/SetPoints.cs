namespace SensorProfile.Frames.Sets;

/// <summary>
/// Frames with one set point, held by the cooler, count as one temperature, however much the readings scatter.
/// </summary>
internal static class SetPoints
{
    private const double Held = 1; // °C; a regulating cooler stays closer, one at its limit does not

    /// <summary>
    /// The set point that all these frames share and their readings confirm, °C; null when there is none.
    /// </summary>
    /// <param name="frames">Frames; those without a reading are trusted if others have one.</param>
    internal static double? HeldBy(IReadOnlyList<Frame> frames)
    {
        ArgumentNullException.ThrowIfNull(frames);
        return
            Shared(frames) is double set
            && frames.Any(f => f.TemperatureCelsius is not null)
            && frames.All(f => f.TemperatureCelsius is not double read || Math.Abs(read - set) <= Held)
            ? set
            : null;
    }

    /// <summary>
    /// The temperature of each frame, °C: the set point of all frames that share it if it was held, otherwise the
    /// frame's own reading; null when unknown.
    /// </summary>
    /// <param name="frames">Frames of one camera, exposure and settings.</param>
    public static IReadOnlyList<double?> TemperaturesOf(IReadOnlyList<Frame> frames)
    {
        ArgumentNullException.ThrowIfNull(frames);
        Dictionary<double, double?> held = frames
            .Where(f => f.SetTemperatureCelsius is not null)
            .GroupBy(f => f.SetTemperatureCelsius!.Value)
            .ToDictionary(g => g.Key, g => HeldBy([.. g]));
        return
        [
            .. frames.Select(f => (f.SetTemperatureCelsius is double set ? held[set] : null) ?? f.TemperatureCelsius),
        ];
    }

    /// <summary>Joins sets with one held set point that were separated by their readings.</summary>
    /// <param name="sets">Sets as the inventory formed them.</param>
    public static IReadOnlyList<FrameSet> Join(IReadOnlyList<FrameSet> sets)
    {
        ArgumentNullException.ThrowIfNull(sets);
        return [.. Groups(sets).SelectMany(g => HeldBy([.. Frames(g)]) is null ? g : [Joined(g)])];
    }

    /// <summary>Reports set points that were not held.</summary>
    /// <param name="sets">Sets as the inventory formed them.</param>
    public static IEnumerable<Finding> NotHeld(IReadOnlyList<FrameSet> sets)
    {
        ArgumentNullException.ThrowIfNull(sets);
        foreach (IReadOnlyList<FrameSet> group in Groups(sets))
        {
            Frame[] frames = [.. Frames(group)];
            double[] read = [.. frames.Select(f => f.TemperatureCelsius).OfType<double>()];
            if (Shared(frames) is double set && read.Length > 0 && HeldBy(frames) is null)
                yield return new Finding(
                    FindingCodes.SetPointNotHeld,
                    Severity.Warning,
                    $"The cooler did not hold {NumberText.Short(set)} °C: {Counted.Nouns(frames.Length, "frame")} read "
                        + $"{NumberText.Short(read.Min())} to {NumberText.Short(read.Max())} °C; their readings count, not "
                        + "the set point.",
                    [.. frames.Select(f => f.Name)]
                );
        }
    }

    /// <summary>
    /// Findings of the inventory that still hold for the joined sets: "split by their readings" no longer does where a
    /// held set point joins them.
    /// </summary>
    /// <param name="findings">Findings of the inventory.</param>
    /// <param name="joined">The sets after <see cref="Join"/>.</param>
    public static IEnumerable<Finding> StillTrue(IEnumerable<Finding> findings, IReadOnlyList<FrameSet> joined)
    {
        HashSet<string> held =
        [
            .. joined.Where(s => HeldBy(s.Frames) is not null).SelectMany(s => s.Frames).Select(f => f.Name),
        ];
        return findings.Where(f => f.Code != FindingCodes.TemperatureDrift || !f.Frames.All(held.Contains));
    }

    private static double? Shared(IReadOnlyList<Frame> frames) =>
        frames.Count > 0
        && frames[0].SetTemperatureCelsius is double set
        && frames.All(f => f.SetTemperatureCelsius == set)
            ? set
            : null;

    private static IEnumerable<Frame> Frames(IReadOnlyList<FrameSet> sets) => sets.SelectMany(s => s.Frames);

    private static IEnumerable<IReadOnlyList<FrameSet>> Groups(IReadOnlyList<FrameSet> sets) =>
        sets.GroupBy(s =>
                (
                    s.Kind,
                    s.Settings,
                    s.Width,
                    s.Height,
                    s.ExposureSeconds,
                    s.Label,
                    s.Frames[0].Camera,
                    Shared(s.Frames) ?? double.NaN,
                    Shared(s.Frames) is null ? s.TemperatureCelsius : null
                )
            )
            .Select(g => (IReadOnlyList<FrameSet>)[.. g]);

    private static FrameSet Joined(IReadOnlyList<FrameSet> sets)
    {
        if (sets.Count == 1)
            return sets[0];
        Frame[] frames = [.. Frames(sets).Order(FrameOrder.ByTimeThenName)];
        return sets[0] with
        {
            Frames = frames,
            TemperatureCelsius = frames.Select(f => f.TemperatureCelsius).OfType<double>().Average(),
        };
    }
}
