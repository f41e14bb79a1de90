using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Tables;

/// <summary>The table of darks that were left out and computed.</summary>
internal static class PredictionTables
{
    /// <summary>One row per left-out set and kind of pixel.</summary>
    public static DataTable Of(DarkPredictionProfile? trials) =>
        new(
            "dark-prediction",
            [
                "temperature_c",
                "exposure_s",
                "frames",
                "left_out",
                "extrapolated",
                "level_e",
                "pixels_of",
                "pixels",
                "coverage",
                "residual_e",
                "residual_uncertainty_e",
                "noise_e",
                "expected_e",
            ],
            [
                .. (trials?.Sets ?? []).SelectMany(s =>
                    new (string Kind, PredictionFigures? Figures)[]
                    {
                        ("typical", s.Typical),
                        ("hot", s.Hot),
                        ("glow", s.Glow),
                        ("flickering", s.Flickering),
                    }
                        .Where(k => k.Figures is not null)
                        .Select(k =>
                            (IReadOnlyList<object?>)
                                [
                                    s.Temperature,
                                    s.Exposure,
                                    s.Frames,
                                    s.LeftOut,
                                    s.Extrapolated,
                                    s.Level,
                                    k.Kind,
                                    k.Figures!.Pixels,
                                    k.Figures.Coverage,
                                    k.Figures.Residual.Value,
                                    k.Figures.Residual.StandardUncertainty,
                                    k.Figures.Noise,
                                    k.Figures.Expected,
                                ]
                        )
                ),
            ]
        );

    /// <summary>One row per way to compute a dark and class of pixels.</summary>
    public static DataTable Classes(DarkPredictionProfile? trials) =>
        new(
            "dark-prediction-classes",
            [
                "left_out",
                "pixels_of",
                "from_noise",
                "to_noise",
                "pixels",
                "plain_coverage",
                "coverage",
                "variance_factor",
                "common_share",
                "residual_e",
                "expected_e",
                "refused",
            ],
            [
                .. new (string LeftOut, PredictionTest? Test)[]
                {
                    ("set", trials?.ByExposure),
                    ("temperature", trials?.ByTemperature),
                    ("outermost", trials?.Beyond),
                }.SelectMany(w =>
                    (w.Test?.Classes ?? []).Select(c =>
                        (IReadOnlyList<object?>)
                            [
                                w.LeftOut,
                                c.Pixels,
                                c.FromNoise,
                                c.ToNoise,
                                c.Compared,
                                c.PlainCoverage,
                                c.Coverage,
                                c.VarianceFactor,
                                c.CommonShare,
                                c.Residual?.Value,
                                c.Expected,
                                c.Refused is { } refused ? EnumWord.Of(refused) : null,
                            ]
                    )
                ),
            ]
        );
}
