using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Nights;

/// <summary>The lights of one set through the night, beside the band of temperatures that its darks serve.</summary>
internal static class NightPlot
{
    private const double FarthestBand = 3; // times the spread of the points; a wider band is clipped there
    private const double RoomForWords = 0.1; // above and below, as a share of what is drawn

    /// <summary>The plot, or null when no light has a temperature.</summary>
    public static Panel? Draw(LightMatch match)
    {
        if (match.Night is not { } night || !night.Lights.Any(light => light.Celsius is not null))
            return null;
        bool timed = night.Lights.All(light => light.StartUtc is not null);
        DateTimeOffset start = timed ? night.Lights.Min(light => light.StartUtc!.Value) : default;
        (double X, LightTemperature Light)[] placed =
        [
            .. night
                .Lights.Select(
                    (light, index) => (timed ? (light.StartUtc!.Value - start).TotalHours : index + 1, light)
                )
                .Where(p => p.light.Celsius is not null),
        ];
        Span drawn = Span.Of(placed.Select(p => p.Light.Celsius!.Value));
        if (night.DarkCelsius is { } darks)
            drawn = drawn.Including(darks);
        double reach = FarthestBand * Math.Max(drawn.High - drawn.Low, 1),
            low = drawn.Low - reach,
            high = drawn.High + reach;
        double from = Math.Max(night.ServesFrom ?? low, low),
            to = Math.Min(night.ServesTo ?? high, high);
        if (night.Known)
            drawn = drawn.Including(from).Including(to);
        drawn = drawn
            .Including(drawn.High + RoomForWords * Math.Max(drawn.High - drawn.Low, 0.1))
            .Including(drawn.Low - RoomForWords * Math.Max(drawn.High - drawn.Low, 0.1));
        PlotModel model = PlotBase.New(MatchWords.Set(match.Lights));
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            timed ? $"Hours after {start.UtcDateTime:yyyy-MM-dd HH:mm} UTC" : "Light, in the order of the names",
            Span.Of(placed.Select(p => p.X))
        );
        PlotBase.AddLinear(model, AxisPosition.Left, "Sensor, °C", drawn);
        if (night.Known)
            model.Annotations.Add(
                new RectangleAnnotation
                {
                    MinimumY = from,
                    MaximumY = to,
                    Fill = OxyColor.FromAColor(60, Palette.Green),
                    Layer = AnnotationLayer.BelowSeries,
                }
            );
        if (night.DarkCelsius is { } celsius)
            PlotMarks.AddLevel(model, celsius, $"darks: {QuantityText.Temperature(celsius)}");
        AddLights(model, placed, night.Known);
        return new Panel(model, 0.4);
    }

    private static void AddLights(PlotModel model, (double X, LightTemperature Light)[] placed, bool known)
    {
        BarPoint[] Points(bool within) =>
            [
                .. placed
                    .Where(p => (p.Light.Within ?? true) == within)
                    .Select(p => new BarPoint(p.X, p.Light.Celsius!.Value, 0)),
            ];
        PlotBase.AddPoints(
            model,
            new PointStyle(known ? "lights served" : "lights", Palette.Blue, MarkerType.Circle, Scale: 0.8),
            Points(within: true)
        );
        PlotBase.AddPoints(
            model,
            new PointStyle(
                "lights outside the tolerance",
                Palette.Vermillion,
                MarkerType.Square,
                Filled: false,
                Scale: 0.9
            ),
            Points(within: false)
        );
    }
}
