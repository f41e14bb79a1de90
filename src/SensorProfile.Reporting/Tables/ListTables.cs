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

    /// <summary>The settings under each sky.</summary>
    public static DataTable Exposures(IEnumerable<GainChoiceAnswer> skies) => new("exposure",
        ["sky", "sky_e_px_s", "gain", "offset", "iso", "binning", "readout", "read_noise_e", "full_well_e", "dynamic_range_stops", "shortest_s", "shortest_uncertainty_s", "longest_s", "advised"],
        [.. skies.SelectMany(sky => sky.Modes.Select(row => (IReadOnlyList<object?>)
        [
            sky.Sky.Name, sky.Sky.Rate.Value, row.Settings.Gain, row.Settings.Offset, row.Settings.Iso, row.Settings.Binning, row.Settings.Readout, row.ReadNoise.Value, row.FullWell?.Value,
            row.DynamicRange?.Value, row.ExposureNeeded.Value, row.ExposureNeeded.StandardUncertainty, row.LongestExposure?.Value, row.Settings == sky.Advised,
        ]))]);

    /// <summary>The frames of a shot list.</summary>
    public static DataTable Shots(ShotListAnswer answer) => new("shots", ["step", "kind", "exposure_s", "temperature_c", "level_pct", "frames", "clock_time_s", "reason"],
        [.. answer.Shots.Select((s, i) => (IReadOnlyList<object?>)[i + 1, s.Kind, s.Exposure, s.Temperature, s.LevelPercent, s.Frames, s.Seconds, s.Reason])]);
}
