using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>
/// Deviation of the flat levels from a straight line against the light, in percent of the line (EMVA 1288 Release 4.0
/// Linear).
/// </summary>
internal static class LinearityPlot
{
    /// <summary>The plot, or null without deviations.</summary>
    public static Panel? Draw(PhotonTransferProfile? profile)
    {
        PhotonTransferCurve[] curves =
        [
            .. (profile?.Curves ?? []).Where(curve => curve.Points.Any(point => point.LinearityDeviation is not null)),
        ];
        if (curves.Length == 0)
            return null;
        PhotonTransferPoint[] all =
        [
            .. curves.SelectMany(curve => curve.Points).Where(point => point.LinearityDeviation is not null),
        ];
        PlotModel model = PlotBase.New();
        if (curves.Length > 1)
            PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            "Signal above dark, ADU",
            Span.Of(all.Select(point => point.Signal)).Including(0)
        );
        LinearAxis axis = PlotBase.AddLinear(
            model,
            AxisPosition.Left,
            "Deviation from the line, %",
            Span.Of(all.SelectMany(Ends)).Including(0)
        );
        PlotBase.MarkZero(axis);
        for (int i = 0; i < curves.Length; i++)
        {
            PlotBase.AddPoints(
                model,
                PointStyle.Of(i, curves[i].Channel),
                [
                    .. curves[i]
                        .Points.Where(point => point.LinearityDeviation is not null)
                        .Select(point => new BarPoint(
                            point.Signal,
                            point.LinearityDeviation!.Value,
                            Uncertainty(point)
                        )),
                ]
            );
        }
        return new Panel(model, 0.36);
    }

    /// <summary>Uncertainty of a deviation, %: from the level alone, since that of the light is not known.</summary>
    private static double Uncertainty(PhotonTransferPoint point) =>
        point.Signal > 0 ? 100 * point.SignalUncertainty / point.Signal : 0;

    private static IEnumerable<double> Ends(PhotonTransferPoint point) =>
        [
            point.LinearityDeviation!.Value - 2 * Uncertainty(point),
            point.LinearityDeviation.Value + 2 * Uncertainty(point),
        ];
}
