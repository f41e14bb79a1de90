using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Hot pixels as a thermometer beside the probe: differences between sets, and drift inside them.</summary>
internal static class ThermometerPlot
{
    private const double Aspect = 0.68;

    /// <summary>The panels that have points.</summary>
    public static Panel[] Draw(IReadOnlyList<HotPixelTemperature> sets) =>
        [.. new[] { Differences(sets), Drifts(sets) }.OfType<Panel>()];

    private static Panel? Differences(IReadOnlyList<HotPixelTemperature> sets)
    {
        HotPixelTemperature[] shown = [.. sets.Where(s => s.Difference is not null)];
        if (shown.Length == 0)
            return null;
        double[] exposures = [.. shown.Select(s => s.Exposure).Distinct().Order()];
        PlotModel model = New("Hot pixels minus probe, °C", shown, s => s.Difference!);
        for (int e = 0; e < exposures.Length; e++)
            PlotBase.AddPoints(
                model,
                PointStyle.Of(e, $"{QuantityText.Number(exposures[e])} s"),
                [
                    .. shown
                        .Where(s => s.Exposure == exposures[e])
                        .Select(s => new BarPoint(
                            s.Reading + Beside(e, exposures.Length, shown),
                            s.Difference!.Value,
                            s.Difference.StandardUncertainty
                        )),
                ]
            );
        return new Panel(model, Aspect);
    }

    private static Panel? Drifts(IReadOnlyList<HotPixelTemperature> sets)
    {
        HotPixelTemperature[] shown = [.. sets.Where(s => s.Drift is not null)];
        if (shown.Length == 0)
            return null;
        double[] exposures = [.. shown.Select(s => s.Exposure).Distinct().Order()];
        double At(HotPixelTemperature s) =>
            s.Reading + Beside(Array.IndexOf(exposures, s.Exposure), exposures.Length, shown);
        PlotModel model = New("Drift inside a set, °C", shown, s => s.Drift!);
        PlotBase.AddPoints(
            model,
            new PointStyle("by hot pixels", Palette.Blue, MarkerType.Circle),
            [.. shown.Select(s => new BarPoint(At(s), s.Drift!.Value, s.Drift.StandardUncertainty))]
        );
        PlotBase.AddPoints(
            model,
            new PointStyle("by the probe", Palette.Vermillion, MarkerType.Diamond, Filled: false),
            [.. shown.Where(s => s.ReadingDrift is not null).Select(s => new BarPoint(At(s), s.ReadingDrift!.Value, 0))]
        );
        return new Panel(model, Aspect);
    }

    private static PlotModel New(
        string title,
        HotPixelTemperature[] shown,
        Func<HotPixelTemperature, Measurement> value
    )
    {
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            "Reading of the probe, °C",
            Span.Of(shown.Select(s => s.Reading)).Padded(0.04)
        );
        PlotBase.MarkZero(
            PlotBase.AddLinear(
                model,
                AxisPosition.Left,
                title,
                Span.Of(
                    shown.SelectMany(s =>
                        new[]
                        {
                            value(s).Value - PlotBase.BarFactor * value(s).StandardUncertainty,
                            value(s).Value + PlotBase.BarFactor * value(s).StandardUncertainty,
                            0,
                        }
                    )
                )
            )
        );
        return model;
    }

    // Sets of one temperature side by side, the shortest exposure to the left.
    private static double Beside(int index, int count, HotPixelTemperature[] shown)
    {
        double range = shown.Max(s => s.Reading) - shown.Min(s => s.Reading);
        return (index - (count - 1) / 2.0) * (range > 1 ? 0.025 * range : 0.05);
    }
}
