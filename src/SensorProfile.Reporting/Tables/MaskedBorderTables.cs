using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Tables;

/// <summary>The masked border, set by set and frame by frame.</summary>
internal static class MaskedBorderTables
{
    /// <summary>The tables; none where there is no masked border.</summary>
    public static IEnumerable<DataTable> Of(MaskedBorderProfile? border) =>
        border is null
            ? []
            :
            [
                new DataTable(
                    "masked-border-sets",
                    [
                        "exposure_s",
                        "temperature_c",
                        "level_adu",
                        "level_uncertainty",
                        "row_noise_adu",
                        "row_noise_uncertainty",
                        "charge_adu",
                        "charge_uncertainty",
                        "shift_adu",
                        "shift_uncertainty",
                    ],
                    [.. border.Sets.Select(Row)]
                ),
                new DataTable(
                    "masked-border-frames",
                    ["frame", "exposure_s", "border_adu", "pixels_adu"],
                    [.. border.Frames.Select(f => (IReadOnlyList<object?>)[f.Frame, f.Exposure, f.Level, f.PixelLevel])]
                ),
            ];

    private static IReadOnlyList<object?> Row(MaskedBorderSet set) =>
        [
            set.Exposure,
            set.Temperature,
            set.Level?.Value,
            set.Level?.StandardUncertainty,
            set.RowNoise?.Value,
            set.RowNoise?.StandardUncertainty,
            set.Charge?.Value,
            set.Charge?.StandardUncertainty,
            set.Shift?.Value,
            set.Shift?.StandardUncertainty,
        ];
}
