using SensorProfile.Decisions.Exposure;

namespace SensorProfile.Reporting.Tables;

/// <summary>Gain settings and exposures as a table.</summary>
internal static class ExposureTable
{
    /// <summary>The settings under each sky.</summary>
    public static DataTable Of(IEnumerable<GainChoiceAnswer> skies) =>
        new(
            "exposure",
            [
                "sky",
                "sky_e_px_s",
                "gain",
                "offset",
                "iso",
                "binning",
                "readout",
                "read_noise_e",
                "full_well_e",
                "dynamic_range_stops",
                "shortest_s",
                "shortest_uncertainty_s",
                "longest_s",
                "advised",
            ],
            [
                .. skies.SelectMany(sky =>
                    sky.Modes.Select(row =>
                        (IReadOnlyList<object?>)
                            [
                                sky.Sky.Name,
                                sky.Sky.Rate.Value,
                                row.Settings.Gain,
                                row.Settings.Offset,
                                row.Settings.Iso,
                                row.Settings.Binning,
                                row.Settings.Readout,
                                row.ReadNoise.Value,
                                row.FullWell?.Value,
                                row.DynamicRange?.Value,
                                row.ExposureNeeded.Value,
                                row.ExposureNeeded.StandardUncertainty,
                                row.LongestExposure?.Value,
                                row.Settings == sky.Advised,
                            ]
                    )
                ),
            ]
        );
}
