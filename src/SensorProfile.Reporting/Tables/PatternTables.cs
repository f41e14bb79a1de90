using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Tables;

/// <summary>The tables of defect pixels and glow.</summary>
internal static class PatternTables
{
    /// <summary>Counts against threshold, shares, doubling by rate, glow.</summary>
    public static IEnumerable<DataTable> Of(FixedPatternProfile? pattern) =>
        pattern is null
            ? []
            :
            [
                new DataTable(
                    "hot-pixels",
                    ["threshold_e_px_s", "pixels", "low_95", "high_95"],
                    [
                        .. pattern.HotPixelCurve.Select(count =>
                            (IReadOnlyList<object?>)[count.Threshold, count.Count, count.Low, count.High]
                        ),
                    ]
                ),
                new DataTable(
                    "rate-quantiles",
                    ["share_of_pixels", "rate_e_px_s", "standard_uncertainty"],
                    [
                        .. pattern.RateQuantiles.Select(quantile =>
                            (IReadOnlyList<object?>)
                                [quantile.Share, quantile.Rate.Value, quantile.Rate.StandardUncertainty]
                        ),
                    ]
                ),
                new DataTable(
                    "doubling-by-rate",
                    ["from_e_px_s", "to_e_px_s", "doubling_c", "standard_uncertainty", "spread_c", "pixels"],
                    [
                        .. pattern.DoublingByRate.Select(c =>
                            (IReadOnlyList<object?>)
                                [
                                    c.RateFrom,
                                    c.RateTo,
                                    c.Doubling.Value,
                                    c.Doubling.StandardUncertainty,
                                    c.Spread,
                                    c.Pixels,
                                ]
                        ),
                    ]
                ),
                new DataTable(
                    "glow",
                    [
                        "where",
                        "x",
                        "y",
                        "peak_e_px_s",
                        "peak_uncertainty",
                        "area_threshold_e_px_s",
                        "area_share",
                        "total_e_s",
                        "exposure_exponent",
                        "doubling_c",
                    ],
                    [
                        .. pattern.Glow.Select(glow =>
                            (IReadOnlyList<object?>)
                                [
                                    glow.Where,
                                    glow.X,
                                    glow.Y,
                                    glow.Peak?.Value,
                                    glow.Peak?.StandardUncertainty,
                                    glow.AreaThreshold,
                                    glow.AreaShare,
                                    glow.Total?.Value,
                                    glow.ExposureExponent?.Value,
                                    glow.DoublingTemperature?.Value,
                                ]
                        ),
                    ]
                ),
                new DataTable(
                    "bias-structure",
                    ["part", "standard_deviation", "standard_uncertainty", "unit"],
                    [
                        .. new (string Part, Measurement? Value)[]
                        {
                            ("total", pattern.Structure?.Total),
                            ("row", pattern.Structure?.Row),
                            ("column", pattern.Structure?.Column),
                            ("pixel", pattern.Structure?.Pixel),
                        }
                            .Where(p => p.Value is not null)
                            .Select(p =>
                                (IReadOnlyList<object?>)
                                    [p.Part, p.Value!.Value, p.Value.StandardUncertainty, p.Value.Unit]
                            ),
                    ]
                ),
                new DataTable(
                    "bias-periods",
                    ["direction", "period_px", "amplitude_adu", "chance"],
                    [
                        .. (pattern.Structure?.Periods ?? []).Select(p =>
                            (IReadOnlyList<object?>)[EnumWord.Of(p.Direction), p.Period, p.Amplitude, p.Chance]
                        ),
                    ]
                ),
                new DataTable(
                    "hot-pixel-thermometer",
                    [
                        "reading_c",
                        "exposure_s",
                        "frames",
                        "difference_c",
                        "difference_uncertainty",
                        "drift_c",
                        "drift_uncertainty",
                        "reading_drift_c",
                        "scatter_c",
                    ],
                    [
                        .. pattern.Thermometer.Select(t =>
                            (IReadOnlyList<object?>)
                                [
                                    t.Reading,
                                    t.Exposure,
                                    t.Frames,
                                    t.Difference?.Value,
                                    t.Difference?.StandardUncertainty,
                                    t.Drift?.Value,
                                    t.Drift?.StandardUncertainty,
                                    t.ReadingDrift,
                                    t.Scatter,
                                ]
                        ),
                    ]
                ),
            ];
}
