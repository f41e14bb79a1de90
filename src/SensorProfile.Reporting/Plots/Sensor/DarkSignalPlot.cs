using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>
/// Dark signal against exposure, one small plot for each temperature, with the line whose slope is the dark current.
/// </summary>
/// <remarks>μ_dark(t) = μ₀ + K·I·t (EMVA 1288 Release 4.0 Linear).</remarks>
internal static class DarkSignalPlot
{
    private const double Aspect = 0.56;

    /// <summary>One panel for each temperature with levels; empty when there are none.</summary>
    /// <param name="dark">The dark currents.</param>
    /// <param name="gain">e-/ADU; null draws the levels without lines.</param>
    public static IReadOnlyList<Panel> Levels(DarkCurrentProfile? dark, Measurement? gain) =>
        [
            .. (dark?.Points ?? [])
                .Where(point => point.Levels.Count > 0)
                .Select(point => new Panel(Level(point, gain), Aspect)),
        ];

    /// <summary>
    /// The growth of the temporal variance, one panel for each temperature with variances; empty when there are none.
    /// </summary>
    /// <param name="dark">The dark currents.</param>
    /// <param name="gain">e-/ADU; null draws the variances without lines.</param>
    public static IReadOnlyList<Panel> Variances(DarkCurrentProfile? dark, Measurement? gain) =>
        [
            .. (dark?.Points ?? [])
                .Where(point => point.Levels.Any(level => level.Variance is not null))
                .Select(point => new Panel(Variance(point, gain), Aspect)),
        ];

    private static PlotModel Level(DarkCurrentPoint point, Measurement? gain)
    {
        BarPoint[] medians =
        [
            .. point.Levels.Select(level => new BarPoint(level.Exposure, level.Median, level.MedianUncertainty)),
        ];
        BarPoint[] means =
        [
            .. point.Levels.Select(level => new BarPoint(level.Exposure, level.Mean, level.MeanUncertainty)),
        ];
        PlotModel model = Empty(point, "Dark signal, ADU", medians.Concat(means));
        AddSlope(model, Palette.Blue, LineStyle.Solid, medians, point.TypicalRate, gain?.Value, power: 1);
        AddSlope(model, Palette.Vermillion, LineStyle.Dash, means, point.MeanRate, gain?.Value, power: 1);
        PlotBase.AddPoints(model, new PointStyle(null, Palette.Blue, MarkerType.Circle), medians);
        PlotBase.AddPoints(model, new PointStyle(null, Palette.Vermillion, MarkerType.Diamond, Filled: false), means);
        return model;
    }

    private static PlotModel Variance(DarkCurrentPoint point, Measurement? gain)
    {
        BarPoint[] variances =
        [
            .. point
                .Levels.Where(level => level.Variance is not null)
                .Select(level => new BarPoint(level.Exposure, level.Variance!.Value, level.VarianceUncertainty ?? 0)),
        ];
        PlotModel model = Empty(point, "Temporal variance, ADU²", variances);
        AddSlope(model, Palette.Green, LineStyle.Solid, variances, point.RateFromVariance, gain?.Value, power: 2);
        PlotBase.AddPoints(model, new PointStyle(null, Palette.Green, MarkerType.Square), variances);
        return model;
    }

    private static PlotModel Empty(DarkCurrentPoint point, string title, IEnumerable<BarPoint> points)
    {
        PlotModel model = PlotBase.New(QuantityText.Temperature(point.Temperature));
        BarPoint[] all = [.. points];
        PlotBase.AddLinear(model, AxisPosition.Bottom, "Exposure, s", Span.Of(all.Select(p => p.X)).Including(0));
        PlotBase.AddLinear(
            model,
            AxisPosition.Left,
            title,
            Span.Of(all.SelectMany(p => new[] { p.Y - 2 * p.Uncertainty, p.Y + 2 * p.Uncertainty })).Including(0)
        );
        return model;
    }

    /// <summary>
    /// A line with the measured rate as slope through the weighted centre of the points, because the profile has no pedestal.
    /// </summary>
    private static void AddSlope(
        PlotModel model,
        OxyColor colour,
        LineStyle style,
        BarPoint[] points,
        Measurement? rate,
        double? gain,
        int power
    )
    {
        if (rate is null || gain is not > 0 || points.Length < 2)
            return;
        double slope = rate.Value / Math.Pow(gain.Value, power);
        double[] weights = [.. points.Select(p => p.Uncertainty > 0 ? 1 / (p.Uncertainty * p.Uncertainty) : 0)];
        if (weights.Any(weight => weight == 0))
            Array.Fill(weights, 1);
        double total = weights.Sum();
        double offset = points.Select((p, i) => weights[i] * (p.Y - slope * p.X)).Sum() / total;
        PlotBase.AddLine(
            model,
            null,
            colour,
            style,
            new[] { 0, points.Max(p => p.X) }.Select(t => new DataPoint(t, offset + slope * t)),
            1
        );
    }
}
