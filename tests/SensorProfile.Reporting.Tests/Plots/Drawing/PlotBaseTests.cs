using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Tests.Plots.Drawing;

/// <summary>Points, bars and axes as all plots draw them.</summary>
public sealed class PlotBaseTests
{
    [Fact]
    public void BarsReach95PercentToEachSide()
    {
        PlotModel model = PlotBase.New();
        PlotBase.AddLinear(model, AxisPosition.Left, "y", new Span(0, 10));
        PlotBase.AddPoints(model, Style, [new BarPoint(1, 5, 0.5), new BarPoint(2, 6, 0)]);
        DataPoint[] ends = [.. Bars(model).Where(p => p.IsDefined())];
        Assert.Equal([5 - 0.98, 5 + 0.98], ends.Select(p => p.Y), (a, b) => Math.Abs(a - b) < 1e-12); // none for u = 0
        Assert.Equal(2, Marks(model).Count);
    }

    /// <summary>A logarithmic axis has no place for zero: the bar ends at the edge, and such a point is left out.</summary>
    [Fact]
    public void ABarThatReachesBelowZeroEndsAtTheEdgeOfALogarithmicAxis()
    {
        PlotModel model = PlotBase.New();
        LogarithmicAxis axis = PlotBase.AddLogarithmic(model, AxisPosition.Left, "y", new Span(0.1, 10));
        PlotBase.AddPoints(model, Style, [new BarPoint(1, 1, 2), new BarPoint(2, -1, 0.1)]);
        Assert.Equal(axis.Minimum, Bars(model)[0].Y);
        Assert.True(axis.Minimum > 0);
        Assert.Equal(1, Assert.Single(Marks(model)).X);
    }

    [Fact]
    public void AnAxisHoldsWhatItMustShow()
    {
        PlotModel model = PlotBase.New();
        LinearAxis axis = PlotBase.AddLinear(model, AxisPosition.Bottom, "x", new Span(-20, 30));
        Assert.True(axis.Minimum < -20 && axis.Maximum > 30);
    }

    private static PointStyle Style => new("points", Palette.Blue, MarkerType.Circle);

    private static List<DataPoint> Bars(PlotModel model) => model.Series.OfType<LineSeries>().Single().Points;

    private static List<ScatterPoint> Marks(PlotModel model) => model.Series.OfType<ScatterSeries>().Single().Points;
}
