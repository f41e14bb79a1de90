using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Tables;

/// <summary>The numbers behind the plots of the decisions.</summary>
internal static class DecisionCurves
{
    /// <summary>Noise added against temperature.</summary>
    public static DataTable Setpoint(IEnumerable<SetpointAnswer> skies) =>
        new(
            "setpoint",
            [
                "sky",
                "sky_e_px_s",
                "exposure_s",
                "temperature_c",
                "added_typical_percent",
                "low_95_percent",
                "high_95_percent",
                "added_at_share_percent",
                "share",
                "extrapolated",
            ],
            [
                .. skies.SelectMany(sky =>
                    sky.Curve.Select(point =>
                        (IReadOnlyList<object?>)
                            [
                                sky.Sky.Name,
                                sky.Sky.Rate.Value,
                                sky.ExposureSeconds,
                                point.Temperature,
                                point.ExtraTypical,
                                point.Low,
                                point.High,
                                point.ExtraAtShare,
                                sky.Share,
                                point.Extrapolated,
                            ]
                    )
                ),
            ]
        );

    /// <summary>Share of each limit used up, against the mismatch.</summary>
    public static DataTable Tolerance(IEnumerable<ToleranceAnswer> stacks) =>
        new(
            "dark-tolerance",
            [
                "sky",
                "sky_e_px_s",
                "exposure_s",
                "temperature_c",
                "lights",
                "dither_positions",
                "rejects_outliers",
                "darks_warmer_by_c",
                "typical",
                "hot_pixels",
                "glow",
                "level",
            ],
            [
                .. stacks.SelectMany(answer =>
                    answer.Curve.Select(point =>
                        (IReadOnlyList<object?>)
                            [
                                answer.Sky.Name,
                                answer.Sky.Rate.Value,
                                answer.Stack.ExposureSeconds,
                                answer.Stack.TemperatureCelsius,
                                answer.Stack.Lights,
                                answer.Stack.DitherPositions,
                                answer.Stack.Rejection != Rejection.None,
                                point.Mismatch,
                                point.Typical,
                                point.HotPixels,
                                point.Glow,
                                point.Level,
                            ]
                    )
                ),
            ]
        );

    /// <summary>Loss against the number of darks.</summary>
    public static DataTable Counts(IEnumerable<DarkCountAnswer> stacks) =>
        new(
            "darks-needed",
            ["sky", "sky_e_px_s", "exposure_s", "temperature_c", "lights", "dither_positions", "darks", "loss_percent"],
            [
                .. stacks.SelectMany(answer =>
                    answer.Curve.Select(point =>
                        (IReadOnlyList<object?>)
                            [
                                answer.Sky.Name,
                                answer.Sky.Rate.Value,
                                answer.Stack.ExposureSeconds,
                                answer.Stack.TemperatureCelsius,
                                answer.Stack.Lights,
                                answer.Stack.DitherPositions,
                                point.Darks,
                                point.Loss,
                            ]
                    )
                ),
            ]
        );

    /// <summary>Loss against the number of flats.</summary>
    public static DataTable Flats(IEnumerable<FlatPlanAnswer> stacks) =>
        new(
            "flats-needed",
            [
                "sky",
                "sky_e_px_s",
                "exposure_s",
                "lights",
                "dither_positions",
                "level_e",
                "level_adu",
                "flats",
                "loss_percent",
            ],
            [
                .. stacks.SelectMany(answer =>
                    answer.Curve.Select(point =>
                        (IReadOnlyList<object?>)
                            [
                                answer.Sky.Name,
                                answer.Sky.Rate.Value,
                                answer.Stack.ExposureSeconds,
                                answer.Stack.Lights,
                                answer.Stack.DitherPositions,
                                answer.Level.Electrons,
                                answer.Level.Adu,
                                point.Flats,
                                point.Loss,
                            ]
                    )
                ),
            ]
        );

    /// <summary>The tables of a mode's usual nights that have rows.</summary>
    public static IEnumerable<DataTable> Of(NightAnswers answers) =>
        new[]
        {
            Setpoint(answers.Setpoints),
            Tolerance(answers.Still.Concat(answers.Dithered)),
            Counts(answers.Counts.Concat(answers.DitheredCounts)),
            Flats(answers.Flats.Concat(answers.DitheredFlats)),
        }.Where(table => table.Rows.Count > 0);
}
