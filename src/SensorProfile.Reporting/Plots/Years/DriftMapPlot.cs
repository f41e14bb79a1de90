using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.Patches;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Years;

/// <summary>Where hot pixels stayed, came, healed and grew brighter, with the outline of patches that grow.</summary>
internal static class DriftMapPlot
{
    /// <summary>Most points drawn of one kind: more would blacken the page and bloat the file.</summary>
    public const int MaxShown = 1500;

    /// <summary>The map.</summary>
    public static Panel Draw(HotPixelDrift hot)
    {
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        Axis across = PlotBase.AddLinear(model, AxisPosition.Bottom, "Column, px", new Span(0, hot.Width)),
            down = PlotBase.AddLinear(model, AxisPosition.Left, "Row, px", new Span(0, hot.Height));
        (across.Minimum, across.Maximum, down.Minimum, down.Maximum) = (0.5, hot.Width + 0.5, 0.5, hot.Height + 0.5);
        // the first row of the file is at the top, as in the maps of the camera report
        (down.StartPosition, down.EndPosition) = (1, 0);
        Add(
            model,
            $"hot as before ({QuantityText.Count(hot.Unchanged.Count)})",
            Palette.Faint,
            MarkerType.Circle,
            0.34,
            true,
            [.. hot.Unchanged.Select(p => (p.X, p.Y))]
        );
        AddKind(model, hot, PixelChange.Healed, Palette.Green, MarkerType.Triangle, 0.8, false);
        AddKind(model, hot, PixelChange.Fainter, Palette.SkyBlue, MarkerType.Diamond, 0.8, false);
        AddKind(model, hot, PixelChange.Brighter, Palette.Orange, MarkerType.Diamond, 0.9, true);
        AddKind(model, hot, PixelChange.New, Palette.Vermillion, MarkerType.Square, 0.5, true);
        foreach (GrowingPatch patch in hot.Patches)
            AddOutline(model, patch);
        return new Panel(model, Math.Clamp(0.9 * hot.Height / Math.Max(1, hot.Width) + 0.08, 0.35, 1.1));
    }

    private static void AddKind(
        PlotModel model,
        HotPixelDrift hot,
        PixelChange change,
        OxyColor colour,
        MarkerType marker,
        double scale,
        bool filled
    )
    {
        (int X, int Y)[] places = [.. hot.Pixels.Where(p => p.Change == change).Select(p => (p.X, p.Y))];
        Add(
            model,
            $"{change.ToString().ToLowerInvariant()} ({QuantityText.Count(places.Length)})",
            colour,
            marker,
            scale,
            filled,
            places
        );
    }

    private static void Add(
        PlotModel model,
        string title,
        OxyColor colour,
        MarkerType marker,
        double scale,
        bool filled,
        (int X, int Y)[] places
    )
    {
        int step = Math.Max(1, (places.Length + MaxShown - 1) / MaxShown);
        PlotBase.AddPoints(
            model,
            new PointStyle(title, colour, marker, filled, scale),
            [.. places.Where((_, i) => i % step == 0).Select(p => new BarPoint(p.X, p.Y, 0))]
        );
    }

    private static void AddOutline(PlotModel model, GrowingPatch patch)
    {
        OutlinePoint[] ring = [.. patch.Outline, patch.Outline[0]];
        PlotBase.AddLine(model, null, Palette.Ink, LineStyle.Solid, ring.Select(p => new DataPoint(p.X, p.Y)), 1.4);
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = $"patch: {QuantityText.Count(patch.NewPixels)} new",
                TextPosition = new DataPoint(patch.X + 1.25 * patch.Radius, patch.Y),
                TextColor = Palette.Ink,
                FontSize = 8,
                Background = Palette.Paper,
                StrokeThickness = 0,
                TextHorizontalAlignment = HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Middle,
            }
        );
    }
}
