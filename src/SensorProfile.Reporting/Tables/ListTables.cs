using SensorProfile.Decisions;

namespace SensorProfile.Reporting.Tables;

/// <summary>The lists of the decisions as tables.</summary>
internal static class ListTables
{
    /// <summary>The masters of a plan.</summary>
    public static DataTable Masters(PlanAnswer answer) => new("darks-plan",
        ["exposure_s", "temperature_c", "gain", "offset", "iso", "binning", "readout", "frames", "serves_from_c", "serves_to_c", "clock_time_s", "disk_mb", "when", "reason"],
        [.. answer.Masters.Select(m => (IReadOnlyList<object?>)
        [
            m.Exposure, m.Temperature, m.Settings.Gain, m.Settings.Offset, m.Settings.Iso, m.Settings.Binning, m.Settings.Readout, m.Frames, m.ServesFrom, m.ServesTo, m.Seconds,
            Math.Round(m.Bytes / 1e6, 1), m.When, m.Reason,
        ])]);

    /// <summary>The frames of a shot list.</summary>
    public static DataTable Shots(ShotListAnswer answer) => new("shots", ["step", "kind", "exposure_s", "temperature_c", "level_pct", "frames", "clock_time_s", "reason"],
        [.. answer.Shots.Select((s, i) => (IReadOnlyList<object?>)[i + 1, s.Kind, s.Exposure, s.Temperature, s.LevelPercent, s.Frames, s.Seconds, s.Reason])]);
}
