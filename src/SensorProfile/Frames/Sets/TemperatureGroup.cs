using SensorProfile.Frames.Survey;

namespace SensorProfile.Frames.Sets;

/// <summary>
/// Sets taken at one temperature, whatever their exposures: a line against exposure may be fitted through them.
/// </summary>
/// <param name="TemperatureCelsius">Mean over the frames, °C; null for the sets whose temperature is unknown.</param>
/// <param name="Sets">The sets, in the given order.</param>
internal sealed record TemperatureGroup(double? TemperatureCelsius, IReadOnlyList<FrameSet> Sets)
{
    /// <summary>
    /// Gathers sets into levels: the mean of every set lies within the tolerance of the mean of its level. Coldest
    /// first, unknown last.
    /// </summary>
    /// <param name="sets">Sets of one kind, camera and mode.</param>
    /// <param name="toleranceCelsius">Tolerance, °C; <see cref="InventoryOptions.TemperatureTolerance"/>.</param>
    public static IReadOnlyList<TemperatureGroup> Gather(IEnumerable<FrameSet> sets, double toleranceCelsius)
    {
        List<FrameSet> all = [.. sets];
        List<FrameSet> known = all.FindAll(s => s.TemperatureCelsius is not null),
            unknown = all.FindAll(s => s.TemperatureCelsius is null);
        List<TemperatureGroup> levels = [];
        foreach (
            IReadOnlyList<int> level in TemperatureClusters.Levels(
                [.. known.Select(s => s.TemperatureCelsius!.Value)],
                toleranceCelsius
            )
        )
        {
            List<FrameSet> members = [.. level.Select(i => known[i])];
            double mean =
                members.Sum(s => s.TemperatureCelsius!.Value * s.Frames.Count) / members.Sum(s => s.Frames.Count);
            levels.Add(new TemperatureGroup(mean, members));
        }
        if (unknown.Count > 0)
            levels.Add(new TemperatureGroup(null, unknown));
        return levels;
    }
}
