using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Tables;

/// <summary>The tables of dark signal and dark current.</summary>
internal static class DarkTables
{
    /// <summary>Levels, rates, laws and the curves of the laws.</summary>
    public static IEnumerable<DataTable> Of(DarkCurrentProfile? dark) =>
        dark is null ? [] : [Levels(dark), Rates(dark), Parameters(dark), Curves(dark)];

    private static DataTable Levels(DarkCurrentProfile dark) =>
        new(
            "dark-signal",
            [
                "temperature_c",
                "exposure_s",
                "frames",
                "median_adu",
                "median_uncertainty_adu",
                "mean_adu",
                "mean_uncertainty_adu",
                "variance_adu2",
                "variance_uncertainty_adu2",
            ],
            [
                .. dark.Points.SelectMany(point =>
                    point.Levels.Select(level =>
                        (IReadOnlyList<object?>)
                            [
                                point.Temperature,
                                level.Exposure,
                                level.Frames,
                                level.Median,
                                level.MedianUncertainty,
                                level.Mean,
                                level.MeanUncertainty,
                                level.Variance,
                                level.VarianceUncertainty,
                            ]
                    )
                ),
            ]
        );

    private static DataTable Rates(DarkCurrentProfile dark) =>
        new(
            "dark-current",
            [
                "temperature_c",
                "typical_e_px_s",
                "typical_uncertainty",
                "mean_e_px_s",
                "mean_uncertainty",
                "from_variance_e_px_s",
                "from_variance_uncertainty",
                "upper_limit_e_px_s",
                "frames",
                "linear",
            ],
            [
                .. dark.Points.Select(point =>
                    (IReadOnlyList<object?>)
                        [
                            point.Temperature,
                            point.TypicalRate?.Value,
                            point.TypicalRate?.StandardUncertainty,
                            point.MeanRate?.Value,
                            point.MeanRate?.StandardUncertainty,
                            point.RateFromVariance?.Value,
                            point.RateFromVariance?.StandardUncertainty,
                            point.UpperLimit,
                            point.Frames,
                            point.Linear,
                        ]
                ),
            ]
        );

    private static DataTable Parameters(DarkCurrentProfile dark) =>
        new(
            "dark-current-models",
            [
                "model",
                "selected",
                "parameter",
                "value",
                "standard_uncertainty",
                "unit",
                "information_criterion",
                "weight",
                "chi_squared",
                "degrees_of_freedom",
            ],
            [
                .. dark.Models.SelectMany(model =>
                    model.Parameters.Select(parameter =>
                        (IReadOnlyList<object?>)
                            [
                                model.Name,
                                model.Name == dark.Selected,
                                parameter.Name,
                                parameter.Value,
                                parameter.StandardUncertainty,
                                parameter.Unit,
                                model.InformationCriterion,
                                model.Weight,
                                model.ChiSquared,
                                model.DegreesOfFreedom,
                            ]
                    )
                ),
            ]
        );

    private static DataTable Curves(DarkCurrentProfile dark)
    {
        var rows = new List<IReadOnlyList<object?>>();
        if (dark.Points.Count > 0)
        {
            var laws = new RateLaws(dark);
            double low = dark.Points.Min(point => point.Temperature),
                high = dark.Points.Max(point => point.Temperature);
            double[] temperatures = [.. DarkCurrentPlot.Temperatures(low, high)];
            IReadOnlyList<object?> Row(string name, double temperature, Measurement rate) =>
                [name, temperature, rate.Value, rate.StandardUncertainty, temperature < low || temperature > high];
            if (laws.CanPredict)
                rows.AddRange(
                    temperatures.Select(temperature =>
                        Row("chosen, with the spread of the laws", temperature, laws.Predicted(temperature)!)
                    )
                );
            rows.AddRange(
                laws.Models.SelectMany(model =>
                    temperatures.Select(temperature => Row(model.Name, temperature, laws.Rate(model, temperature)))
                )
            );
        }
        return new DataTable(
            "dark-current-curves",
            ["law", "temperature_c", "rate_e_px_s", "standard_uncertainty", "extrapolated"],
            rows
        );
    }
}
