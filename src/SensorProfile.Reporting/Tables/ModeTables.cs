using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Tables;

/// <summary>The tables of one mode: the numbers of every plot and the data behind them.</summary>
internal static class ModeTables
{
    /// <summary>The tables that have rows.</summary>
    public static IEnumerable<DataTable> Of(ModeProfile mode)
    {
        DataTable[] tables =
        [
            Quantities(mode),
            PhotonTransfer(mode.PhotonTransfer),
            Noise(mode.NoiseDistribution),
            .. DarkTables.Of(mode.DarkCurrent),
            .. PatternTables.Of(mode.FixedPattern),
            .. SensorTables.Of(mode.FixedPattern),
            FlickerTables.Reach(mode.FixedPattern),
            PredictionTables.Of(mode.FixedPattern?.DarkPrediction),
            PredictionTables.Classes(mode.FixedPattern?.DarkPrediction),
        ];
        return tables.Where(table => table.Rows.Count > 0);
    }

    private static DataTable Quantities(ModeProfile mode)
    {
        IEnumerable<IReadOnlyList<object?>> rows = ProfileQuantities
            .Of(mode)
            .Select(named => Row("", named))
            .Concat(
                mode.Channels.SelectMany(channel =>
                    ProfileQuantities.Of(channel).Select(named => Row(channel.Name, named))
                )
            );
        return new DataTable(
            "quantities",
            ["channel", "quantity", "value", "standard_uncertainty", "unit", "samples", "method"],
            [.. rows]
        );
    }

    private static IReadOnlyList<object?> Row(string channel, NamedQuantity named) =>
        [
            channel,
            named.Key,
            named.Quantity?.Value,
            named.Quantity?.StandardUncertainty,
            named.Quantity?.Unit,
            named.Quantity?.Samples,
            named.Quantity?.Method,
        ];

    private static DataTable PhotonTransfer(PhotonTransferProfile? profile)
    {
        var rows = new List<IReadOnlyList<object?>>();
        foreach (PhotonTransferCurve curve in profile?.Curves ?? [])
        {
            Func<double, double>? straight = PhotonTransferPlot.Straight(curve),
                curved = PhotonTransferPlot.Curved(curve);
            foreach (PhotonTransferPoint point in curve.Points)
            {
                rows.Add([
                    curve.Channel,
                    point.Exposure,
                    point.Signal,
                    point.SignalUncertainty,
                    point.Variance,
                    point.VarianceUncertainty,
                    straight?.Invoke(point.Signal),
                    curved?.Invoke(point.Signal),
                    point.InGainFit,
                    point.InLinearityFit,
                    point.LinearityDeviation,
                    string.Join("; ", point.Frames),
                ]);
            }
        }
        return new DataTable(
            "photon-transfer",
            [
                "channel",
                "exposure_s",
                "signal_adu",
                "signal_uncertainty_adu",
                "variance_adu2",
                "variance_uncertainty_adu2",
                "straight_fit_adu2",
                "curved_fit_adu2",
                "in_gain_fit",
                "in_linearity_fit",
                "linearity_deviation_percent",
                "frames",
            ],
            rows
        );
    }

    private static DataTable Noise(NoiseDistribution? noise)
    {
        int bins = noise is null ? 0 : Math.Min(noise.BinEdges.Count, noise.Counts.Count);
        string unit = noise?.Unit == "ADU" ? "adu" : "electrons";
        return new DataTable(
            "noise-distribution",
            [$"from_{unit}", "pixels"],
            [.. Enumerable.Range(0, bins).Select(i => (IReadOnlyList<object?>)[noise!.BinEdges[i], noise.Counts[i]])]
        );
    }
}
