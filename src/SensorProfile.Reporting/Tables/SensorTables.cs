using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Tables;

/// <summary>
/// The numbers behind the pages on blemishes, growth of the glow, lines and black level.
/// </summary>
internal static class SensorTables
{
    /// <summary>The tables.</summary>
    public static IEnumerable<DataTable> Of(FixedPatternProfile? pattern) =>
        pattern is null
            ? []
            :
            [
                new DataTable("places", ["kind", "where", "x", "y", "pixels", "of_pixels"], [.. Places(pattern)]),
                new DataTable(
                    "hot-pixels-by-temperature",
                    ["temperature_c", "threshold_e_px_s", "pixels", "low_95", "high_95"],
                    [
                        .. pattern.HotPixelCurves.SelectMany(c =>
                            c.Counts.Select(p =>
                                (IReadOnlyList<object?>)[c.Temperature, p.Threshold, p.Count, p.Low, p.High]
                            )
                        ),
                    ]
                ),
                new DataTable(
                    "glow-rates",
                    [
                        "where",
                        "temperature_c",
                        "exposure_s",
                        "signal_e",
                        "signal_uncertainty",
                        "rate_e_px_s",
                        "rate_uncertainty",
                    ],
                    [.. pattern.Glow.SelectMany(Growth)]
                ),
                new DataTable(
                    "line-profiles",
                    ["direction", "line_px", "deviation_adu"],
                    [
                        .. (pattern.Structure?.Lines ?? []).SelectMany(l =>
                            l.Deviations.Select(
                                (d, i) =>
                                    (IReadOnlyList<object?>)
                                        [EnumWord.Of(l.Direction), (i + 0.5) * l.LinesPerPoint + 0.5, d]
                            )
                        ),
                    ]
                ),
                new DataTable(
                    "line-spectra",
                    ["direction", "period_px", "amplitude_adu", "significant_from_adu"],
                    [
                        .. (pattern.Structure?.Lines ?? []).SelectMany(l =>
                            l.Periods.Zip(l.Amplitudes, l.Limits)
                                .Select(p =>
                                    (IReadOnlyList<object?>)[EnumWord.Of(l.Direction), p.First, p.Second, p.Third]
                                )
                        ),
                    ]
                ),
                .. Level(pattern.BlackLevel),
                .. MaskedBorderTables.Of(pattern.MaskedBorder),
            ];

    private static IEnumerable<IReadOnlyList<object?>> Places(FixedPatternProfile pattern)
    {
        foreach (GlowRegion glow in pattern.Glow)
            yield return ["glow", glow.Where, glow.X, glow.Y, null, null];
        if (pattern.Places is not { } places)
            yield break;
        foreach (DefectArea area in places.Areas)
            yield return ["hot pixels", area.Where, null, null, area.Hot, area.Pixels];
        foreach (DefectCluster cluster in places.Clusters)
            yield return ["touching hot pixels", null, cluster.X, cluster.Y, cluster.Pixels, null];
        foreach (int column in places.Columns)
            yield return ["column", null, column, null, null, null];
        foreach (int row in places.Rows)
            yield return ["row", null, null, row, null, null];
    }

    private static IEnumerable<IReadOnlyList<object?>> Growth(GlowRegion glow) =>
        [
            .. glow.Signals.Select(s =>
                (IReadOnlyList<object?>)
                    [glow.Where, s.Temperature, s.Exposure, s.Signal.Value, s.Signal.StandardUncertainty, null, null]
            ),
            .. glow.Rates.Select(r =>
                (IReadOnlyList<object?>)
                    [glow.Where, r.Temperature, null, null, null, r.Rate.Value, r.Rate.StandardUncertainty]
            ),
        ];

    private static IEnumerable<DataTable> Level(BlackLevelProfile? level) =>
        level is null
            ? []
            :
            [
                new DataTable(
                    "black-level",
                    ["hours", "temperature_c", "exposure_s", "level_adu", "level_uncertainty", "expected_adu"],
                    [
                        .. level.Points.Select(p =>
                            (IReadOnlyList<object?>)
                                [p.Hours, p.Temperature, p.Exposure, p.Level, p.Uncertainty, p.Expected]
                        ),
                    ]
                ),
                new DataTable(
                    "black-level-terms",
                    ["term", "value", "standard_uncertainty", "unit"],
                    [
                        .. new (string Term, Measurement? Value)[]
                        {
                            ("level", level.Level),
                            ("jitter", level.Jitter),
                            ("set scatter", level.SetScatter),
                            ("drift per hour", level.DriftPerHour),
                            ("drift per degree", level.DriftPerDegree),
                            ("drift per second", level.DriftPerSecond),
                            ("first frame difference", level.FirstFrameDifference),
                        }
                            .Where(t => t.Value is not null)
                            .Select(t =>
                                (IReadOnlyList<object?>)
                                    [t.Term, t.Value!.Value, t.Value.StandardUncertainty, t.Value.Unit]
                            ),
                    ]
                ),
                new DataTable(
                    "smallest-dark-current",
                    [
                        "temperature_c",
                        "longest_exposure_s",
                        "smallest_e_px_s",
                        "smallest_uncertainty",
                        "rate_e_px_s",
                        "rate_uncertainty",
                    ],
                    [
                        .. level.Limits.Select(l =>
                            (IReadOnlyList<object?>)
                                [
                                    l.Temperature,
                                    l.LongestExposure,
                                    l.Smallest?.Value,
                                    l.Smallest?.StandardUncertainty,
                                    l.Rate?.Value,
                                    l.Rate?.StandardUncertainty,
                                ]
                        ),
                    ]
                ),
                new DataTable(
                    FindingCodes.BlackLevelJumps,
                    ["frame", "step_adu", "standard_uncertainty"],
                    [
                        .. level.Jumps.Select(j =>
                            (IReadOnlyList<object?>)[j.Frame, j.Step.Value, j.Step.StandardUncertainty]
                        ),
                    ]
                ),
            ];
}
