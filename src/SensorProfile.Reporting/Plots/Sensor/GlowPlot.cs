using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Growth of the strongest glow against exposure and temperature.</summary>
internal static class GlowPlot
{
    /// <summary>Signal against exposure, one series for each temperature; null without signals.</summary>
    public static Panel? AgainstExposure(FixedPatternProfile pattern)
    {
        GlowSignal[] signals =
        [
            .. (Strongest(pattern)?.Signals ?? []).Where(s =>
                s.Exposure > 0 && s.Signal.Value > 2 * s.Signal.StandardUncertainty
            ),
        ];
        if (signals.Length < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            "Exposure, s",
            Span.OfPositive(signals.Select(s => s.Exposure))
        );
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Glow, e⁻/px",
            Span.OfPositive(signals.Select(s => s.Signal.Value))
        );
        foreach (
            (GlowSignal[] group, int index) in signals.GroupBy(s => s.Temperature).Select((g, i) => (g.ToArray(), i))
        )
        {
            PlotBase.AddPoints(
                model,
                PointStyle.Of(index, QuantityText.Temperature(group[0].Temperature)),
                [.. group.Select(s => new BarPoint(s.Exposure, s.Signal.Value, s.Signal.StandardUncertainty))]
            );
            GlowSignal longest = group.MaxBy(s => s.Exposure)!;
            PlotBase.AddLine(
                model,
                null,
                Palette.Series(index),
                LineStyle.Dot,
                group.Select(s => new DataPoint(s.Exposure, longest.Signal.Value * s.Exposure / longest.Exposure)),
                0.9
            );
        }
        return new Panel(model, 0.95);
    }

    /// <summary>Rate against temperature beside the typical pixel's; null without rates.</summary>
    public static Panel? AgainstTemperature(ModeProfile mode)
    {
        GlowRate[] rates =
        [
            .. (Strongest(mode.FixedPattern)?.Rates ?? []).Where(r => r.Rate.Value > 2 * r.Rate.StandardUncertainty),
        ];
        if (rates.Length < 2)
            return null;
        (double Temperature, Measurement Rate)[] typical =
        [
            .. (mode.DarkCurrent?.Points ?? [])
                .Select(p => (p.Temperature, Rate: p.TypicalRate ?? p.RateFromVariance))
                .Where(p => p.Rate is { Value: > 0 })
                .Select(p => (p.Temperature, p.Rate!)),
        ];
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            "Sensor temperature, °C",
            Span.Of(rates.Select(r => r.Temperature).Concat(typical.Select(p => p.Temperature)))
        );
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Rate, e⁻/px/s",
            Span.OfPositive(rates.Select(r => r.Rate.Value).Concat(typical.Select(p => p.Rate.Value)))
        );
        Draw(
            model,
            new PointStyle("glow, brightest place", Palette.Vermillion, MarkerType.Diamond),
            [.. rates.Select(r => new BarPoint(r.Temperature, r.Rate.Value, r.Rate.StandardUncertainty))]
        );
        Draw(
            model,
            new PointStyle("typical pixel", Palette.Blue, MarkerType.Circle),
            [.. typical.Select(p => new BarPoint(p.Temperature, p.Rate.Value, p.Rate.StandardUncertainty))]
        );
        return new Panel(model, 0.95);
    }

    private static GlowRegion? Strongest(FixedPatternProfile? pattern) =>
        pattern is { Glow.Count: > 0 } ? pattern.Glow[0] : null;

    private static void Draw(PlotModel model, PointStyle style, BarPoint[] points)
    {
        PlotBase.AddLine(
            model,
            null,
            style.Colour,
            LineStyle.Dot,
            points.OrderBy(p => p.X).Select(p => new DataPoint(p.X, p.Y)),
            0.9
        );
        PlotBase.AddPoints(model, style, points);
    }
}
