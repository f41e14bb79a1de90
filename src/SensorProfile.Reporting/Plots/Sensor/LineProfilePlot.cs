using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Means of columns or rows, and their spectrum.</summary>
internal static class LineProfilePlot
{
    private const double Aspect = 0.62;

    /// <summary>Means against the number of the line; null without points.</summary>
    public static Panel? Means(LineProfile profile)
    {
        if (profile.Deviations.Count < 2)
            return null;
        PlotModel model = PlotBase.New();
        int step = Math.Max(1, profile.LinesPerPoint);
        PlotBase.AddLinear(
            model,
            AxisPosition.Bottom,
            profile.Direction == PatternDirection.Across ? "Column, px" : "Row, px",
            new Span(1, profile.Deviations.Count * step)
        );
        PlotBase.MarkZero(PlotBase.AddLinear(model, AxisPosition.Left, "Mean level, ADU", Span.Of(profile.Deviations)));
        PlotBase.AddLine(
            model,
            null,
            Palette.Blue,
            LineStyle.Solid,
            profile.Deviations.Select((d, i) => new DataPoint((i + 0.5) * step + 0.5, d)),
            0.8
        );
        return new Panel(model, Aspect);
    }

    /// <summary>Amplitude against period; null without points.</summary>
    public static Panel? Spectrum(LineProfile profile, IReadOnlyList<PatternPeriod> significant)
    {
        int count = new[] { profile.Periods.Count, profile.Amplitudes.Count, profile.Limits.Count }.Min();
        int[] shown = [.. Enumerable.Range(0, count).Where(i => profile.Periods[i] > 0 && profile.Amplitudes[i] > 0)];
        if (shown.Length < 2)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLogarithmic(
            model,
            AxisPosition.Bottom,
            profile.Direction == PatternDirection.Across ? "Period across columns, px" : "Period down rows, px",
            Span.OfPositive(shown.Select(i => profile.Periods[i]))
        );
        double top = shown.Max(i => Math.Max(profile.Amplitudes[i], profile.Limits[i]));
        PlotBase.AddLinear(model, AxisPosition.Left, "Amplitude, ADU", new Span(0, 1.1 * top)).Minimum = 0;
        PlotBase.AddLine(
            model,
            null,
            Palette.Blue,
            LineStyle.Solid,
            shown.Select(i => new DataPoint(profile.Periods[i], profile.Amplitudes[i])),
            0.8
        );
        PlotBase.AddLine(
            model,
            null,
            Palette.Vermillion,
            LineStyle.Dash,
            shown.Where(i => profile.Limits[i] > 0).Select(i => new DataPoint(profile.Periods[i], profile.Limits[i])),
            0.9
        );
        foreach (PatternPeriod period in significant.Where(p => p.Direction == profile.Direction))
            model.Annotations.Add(
                new TextAnnotation
                {
                    Text = $"{QuantityText.Number(period.Period, 3)} px",
                    TextPosition = new DataPoint(period.Period, period.Amplitude),
                    TextColor = Palette.Ink,
                    FontSize = 7.5,
                    StrokeThickness = 0,
                    TextHorizontalAlignment = HorizontalAlignment.Center,
                    TextVerticalAlignment = VerticalAlignment.Bottom,
                }
            );
        return new Panel(model, Aspect);
    }
}
