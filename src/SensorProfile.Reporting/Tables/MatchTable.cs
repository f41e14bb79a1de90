using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Reporting.Answers.Darks;

namespace SensorProfile.Reporting.Tables;

/// <summary>Every light set against every dark set.</summary>
internal static class MatchTable
{
    /// <summary>One row for each pair.</summary>
    public static DataTable Of(MatchAnswer answer) =>
        new(
            "dark-match",
            [
                "lights",
                "darks",
                "verdict",
                "scaled",
                "loss_percent",
                "loss_uncertainty_percent",
                "darks_warmer_by_c",
                "drift_of_lights_c",
                "cause",
                "reason",
            ],
            [
                .. answer.Pairs.Select(pair =>
                    (IReadOnlyList<object?>)
                        [
                            MatchWords.Set(pair.Lights),
                            pair.Darks is { } darks ? MatchWords.Set(darks) : null,
                            EnumWord.Of(pair.Verdict),
                            pair.Scaled,
                            pair.Loss?.Value,
                            pair.Loss?.StandardUncertainty,
                            pair.TemperatureDifference,
                            pair.Drift,
                            pair.BindingCause is { } cause ? EnumWord.Of(cause) : null,
                            MatchWords.Reason(pair),
                        ]
                ),
            ]
        );
}
