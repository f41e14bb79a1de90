using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Tables;

/// <summary>The table of what the frames could show of flickering pixels.</summary>
internal static class FlickerTables
{
    /// <summary>One row per step and dwell time.</summary>
    public static DataTable Reach(FixedPatternProfile? pattern) =>
        new(
            "flicker-reach",
            ["step_read_noises", "dwell_s", "share_counted"],
            [
                .. (pattern?.FlickerReach ?? []).Select(r =>
                    (IReadOnlyList<object?>)[r.StepNoise, r.DwellSeconds, r.Share]
                ),
            ]
        );
}
