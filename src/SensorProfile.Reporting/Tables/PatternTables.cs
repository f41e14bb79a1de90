using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Tables;

/// <summary>The tables of defect pixels and glow.</summary>
internal static class PatternTables
{
    /// <summary>Counts against threshold, shares, doubling by rate, glow.</summary>
    public static IEnumerable<DataTable> Of(FixedPatternProfile? pattern) => pattern is null ? [] :
    [
        new DataTable("hot-pixels", ["threshold_e_px_s", "pixels", "low_95", "high_95"],
            [.. pattern.HotPixelCurve.Select(count => (IReadOnlyList<object?>)[count.Threshold, count.Count, count.Low, count.High])]),
        new DataTable("rate-quantiles", ["share_of_pixels", "rate_e_px_s", "standard_uncertainty"],
            [.. pattern.RateQuantiles.Select(quantile => (IReadOnlyList<object?>)[quantile.Share, quantile.Rate.Value, quantile.Rate.StandardUncertainty])]),
        new DataTable("doubling-by-rate", ["from_e_px_s", "to_e_px_s", "doubling_c", "standard_uncertainty", "spread_c", "pixels"],
            [.. pattern.DoublingByRate.Select(c => (IReadOnlyList<object?>)[c.RateFrom, c.RateTo, c.Doubling.Value, c.Doubling.StandardUncertainty, c.Spread, c.Pixels])]),
        new DataTable("glow", ["where", "x", "y", "peak_e_px_s", "peak_uncertainty", "area_threshold_e_px_s", "area_share", "total_e_s", "exposure_exponent", "doubling_c"],
            [.. pattern.Glow.Select(glow => (IReadOnlyList<object?>)
                [glow.Where, glow.X, glow.Y, glow.Peak?.Value, glow.Peak?.StandardUncertainty, glow.AreaThreshold, glow.AreaShare, glow.Total?.Value, glow.ExposureExponent?.Value, glow.DoublingTemperature?.Value])]),
    ];
}
