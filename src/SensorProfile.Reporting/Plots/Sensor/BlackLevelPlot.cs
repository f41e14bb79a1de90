using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Black level and sensor temperature over time.</summary>
internal static class BlackLevelPlot
{
    private const string Temperature = "temperature";

    /// <summary>The plot; null without points.</summary>
    public static Panel? Draw(BlackLevelProfile level)
    {
        bool timed = level.Points.Count > 0 && level.Points.All(p => p.Hours is not null);
        (BlackLevelPoint Point, double X)[] points =
        [
            .. level.Points.Select((p, i) => (p, timed ? p.Hours!.Value : i + 1)),
        ];
        if (points.Length < 2)
            return null;
        bool temperatures = points.Any(p => p.Point.Temperature is not null);
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            timed ? "Hours after the first frame" : "Frame, in order",
            Span.Of(points.Select(p => p.X))
        );
        LinearAxis axis = PlotBase.AddLinear(
            model,
            AxisPosition.Left,
            "Level, ADU",
            Span.Of(points.SelectMany(p => new[] { p.Point.Level, p.Point.Expected }))
        );
        axis.EndPosition = temperatures ? 0.66 : 1;
        if (temperatures)
        {
            LinearAxis upper = PlotBase.AddLinear(
                model,
                AxisPosition.Left,
                "Sensor, °C",
                Span.Of(points.Select(p => p.Point.Temperature ?? double.NaN))
            );
            (upper.Key, upper.StartPosition) = (Temperature, 0.71);
            PlotBase.AddPoints(
                model,
                new PointStyle(null, Palette.Faint, MarkerType.Circle, Scale: 0.5),
                [
                    .. points
                        .Where(p => p.Point.Temperature is not null)
                        .Select(p => new BarPoint(p.X, p.Point.Temperature!.Value, 0)),
                ],
                Temperature
            );
        }
        PlotBase.AddLine(
            model,
            "expected",
            Palette.Ink,
            LineStyle.Solid,
            points.Select(p => new DataPoint(p.X, p.Point.Expected)),
            0.8
        );
        double[] exposures = [.. points.Select(p => p.Point.Exposure).Distinct().Order()];
        double longest = exposures[^1];
        Add("bias", Palette.Blue, MarkerType.Circle, p => p.Exposure <= 0);
        Add(
            exposures.Length > 2 ? $"darks up to {QuantityText.Number(longest / 3, 2)} s" : "darks",
            Palette.Orange,
            MarkerType.Square,
            p => p.Exposure > 0 && (exposures.Length <= 2 || p.Exposure <= longest / 3)
        );
        Add("longer darks", Palette.Vermillion, MarkerType.Triangle, p =>
            exposures.Length > 2 && p.Exposure > longest / 3
        );
        return new Panel(model, 0.48);

        void Add(string title, OxyColor colour, MarkerType marker, Func<BlackLevelPoint, bool> belongs) =>
            PlotBase.AddPoints(
                model,
                new PointStyle(title, colour, marker, Scale: 0.6),
                [
                    .. points
                        .Where(p => belongs(p.Point))
                        .Select(p => new BarPoint(p.X, p.Point.Level, p.Point.Uncertainty)),
                ]
            );
    }
}
