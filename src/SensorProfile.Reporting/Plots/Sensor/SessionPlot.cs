using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>The session: sensor temperature and level of every frame over time.</summary>
internal static class SessionPlot
{
    private static readonly string[] _kinds = ["bias", "dark", "flat", "dark-flat", "light"];

    /// <summary>The plot, or null when the profile says nothing about its frames.</summary>
    public static Panel? Draw(FramesInfo frames)
    {
        IReadOnlyList<FrameSummary> session = frames.Session;
        bool timed = session.Any(frame => frame.StartUtc is not null);
        DateTimeOffset start = timed ? session.Min(frame => frame.StartUtc ?? DateTimeOffset.MaxValue) : default;
        (FrameSummary Frame, double X)[] placed =
        [
            .. session
                .Select(
                    (frame, index) =>
                        (
                            frame,
                            timed
                                ? frame.StartUtc is { } time
                                    ? (time - start).TotalHours
                                    : double.NaN
                                : index + 1
                        )
                )
                .Where(pair => double.IsFinite(pair.Item2)),
        ];
        bool temperatures = placed.Any(p => p.Frame.Temperature is not null),
            levels = placed.Any(p => ShowsLevel(p.Frame));
        if (!temperatures && !levels)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        string title = timed
            ? $"Hours after {start.UtcDateTime:yyyy-MM-dd HH:mm} UTC"
            : "Frame, in the order of the names";
        PlotBase.AddLinear(model, AxisPosition.Bottom, title, Span.Of(placed.Select(p => p.X)));
        AddAxes(model, placed, temperatures, levels);
        for (int kind = 0; kind < _kinds.Length; kind++)
            AddKind(model, kind, [.. placed.Where(p => p.Frame.Kind == _kinds[kind])], temperatures, levels);
        return new Panel(model, temperatures && levels ? 0.5 : 0.32);
    }

    /// <summary>Only frames without light have their levels drawn: on the scale of flats they would not show.</summary>
    private static bool ShowsLevel(FrameSummary frame) =>
        frame is { Level: not null, Kind: "bias" or "dark" or "dark-flat" };

    private static void AddAxes(
        PlotModel model,
        (FrameSummary Frame, double X)[] placed,
        bool temperatures,
        bool levels
    )
    {
        if (levels)
        {
            LinearAxis axis = PlotBase.AddLinear(
                model,
                AxisPosition.Left,
                "Level, ADU",
                Span.Of(placed.Where(p => ShowsLevel(p.Frame)).Select(p => p.Frame.Level!.Value))
            );
            axis.Key = "level";
            axis.EndPosition = temperatures ? 0.42 : 1;
        }
        if (temperatures)
        {
            Span range = Span.Of(placed.Select(p => p.Frame.Temperature ?? double.NaN));
            LinearAxis axis = PlotBase.AddLinear(model, AxisPosition.Left, "Sensor, °C", range);
            axis.Key = "temperature";
            axis.StartPosition = levels ? 0.48 : 0;
        }
    }

    private static void AddKind(
        PlotModel model,
        int kind,
        (FrameSummary Frame, double X)[] placed,
        bool temperatures,
        bool levels
    )
    {
        PointStyle style = new(
            _kinds[kind] == "bias" ? "bias" : _kinds[kind] + "s",
            Palette.Series(kind),
            Palette.Marker(kind),
            Scale: 0.55
        );
        if (temperatures)
            PlotBase.AddPoints(
                model,
                style,
                [
                    .. placed
                        .Where(p => p.Frame.Temperature is not null)
                        .Select(p => new BarPoint(p.X, p.Frame.Temperature!.Value, 0)),
                ],
                "temperature"
            );
        if (levels)
            PlotBase.AddPoints(
                model,
                temperatures ? style with { Title = null } : style,
                [.. placed.Where(p => ShowsLevel(p.Frame)).Select(p => new BarPoint(p.X, p.Frame.Level!.Value, 0))],
                "level"
            );
    }
}
