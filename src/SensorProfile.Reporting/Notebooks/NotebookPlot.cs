using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Notebooks;

/// <summary>A plot of a notebook, in the look of the report's: axes with units, bars of 95 %.</summary>
/// <param name="horizontal">Quantity and unit of the abscissa.</param>
/// <param name="vertical">Quantity and unit of the ordinate.</param>
public sealed class NotebookPlot(string horizontal, string vertical)
{
    private const double Aspect = 0.5; // height over width
    private readonly List<Action<PlotModel, double>> drawn = [];
    private readonly List<double> across = [],
        up = [];
    private int series;

    /// <summary>Whether the abscissa is logarithmic.</summary>
    public bool LogarithmicAcross { get; init; }

    /// <summary>Whether the ordinate is logarithmic.</summary>
    public bool LogarithmicUp { get; init; }

    /// <summary>Adds measured values with bars of 95 %.</summary>
    /// <param name="name">In the legend.</param>
    /// <param name="points">Abscissa and value; the bar is 1.96 standard uncertainties to either side.</param>
    public NotebookPlot Points(string name, IEnumerable<(double X, Measurement Y)> points)
    {
        BarPoint[] bars = [.. points.Select(p => new BarPoint(p.X, p.Y.Value, p.Y.StandardUncertainty))];
        across.AddRange(bars.Select(p => p.X));
        up.AddRange(bars.Select(p => p.Y));
        up.AddRange(
            bars.SelectMany(p =>
                new[] { p.Y - PlotBase.BarFactor * p.Uncertainty, p.Y + PlotBase.BarFactor * p.Uncertainty }
            )
        );
        int index = series++;
        drawn.Add((model, _) => PlotBase.AddPoints(model, PointStyle.Of(index, name), bars));
        return this;
    }

    /// <summary>Adds a line.</summary>
    /// <param name="name">In the legend.</param>
    /// <param name="points">From left to right.</param>
    public NotebookPlot Line(string name, IEnumerable<(double X, double Y)> points)
    {
        DataPoint[] line = [.. points.Select(p => new DataPoint(p.X, p.Y))];
        across.AddRange(line.Select(p => p.X));
        up.AddRange(line.Select(p => p.Y));
        int index = series++;
        drawn.Add((model, _) => PlotBase.AddLine(model, name, Palette.Series(index), LineStyle.Solid, line));
        return this;
    }

    /// <summary>Adds a histogram.</summary>
    /// <param name="name">In the legend.</param>
    /// <param name="edges">Edges of the bins, rising, one more than there are counts.</param>
    /// <param name="counts">Counts.</param>
    public NotebookPlot Steps(string name, IReadOnlyList<double> edges, IReadOnlyList<double> counts)
    {
        ArgumentNullException.ThrowIfNull(edges);
        ArgumentNullException.ThrowIfNull(counts);
        if (edges.Count != counts.Count + 1)
            throw new ArgumentException($"{counts.Count} counts need {counts.Count + 1} edges, not {edges.Count}.");
        across.AddRange(edges);
        up.AddRange(counts);
        up.Add(0);
        int index = series++;
        drawn.Add((model, floor) => model.Series.Add(Area(name, index, edges, counts, floor)));
        return this;
    }

    /// <summary>Adds a value of the abscissa with its words: solid for one of this camera, dashed for one from
    /// elsewhere.</summary>
    /// <param name="x">The value.</param>
    /// <param name="words">What it is.</param>
    /// <param name="fromElsewhere">Published, or a rule of thumb.</param>
    public NotebookPlot Mark(double x, string words, bool fromElsewhere)
    {
        across.Add(x);
        drawn.Add(
            (model, _) =>
                PlotMarks.AddValue(
                    model,
                    x,
                    words,
                    fromElsewhere ? Palette.Faint : Palette.Vermillion,
                    fromElsewhere ? LineStyle.Dash : LineStyle.Solid
                )
        );
        return this;
    }

    /// <summary>Adds a value of the ordinate with its words.</summary>
    /// <param name="y">The value.</param>
    /// <param name="words">What it is.</param>
    public NotebookPlot Level(double y, string words)
    {
        up.Add(y);
        drawn.Add((model, _) => PlotMarks.AddLevel(model, y, words));
        return this;
    }

    internal Panel Draw()
    {
        PlotModel model = PlotBase.New();
        if (series > 0)
            PlotBase.AddLegend(model);
        _ = AddAxis(model, AxisPosition.Bottom, horizontal, across, LogarithmicAcross);
        Axis ordinate = AddAxis(model, AxisPosition.Left, vertical, up, LogarithmicUp);
        foreach (Action<PlotModel, double> draw in drawn)
            draw(model, LogarithmicUp ? ordinate.Minimum : 0);
        return new Panel(model, Aspect);
    }

    private static Axis AddAxis(
        PlotModel model,
        AxisPosition position,
        string title,
        IEnumerable<double> values,
        bool logarithmic
    ) =>
        logarithmic
            ? PlotBase.AddLogarithmic(model, position, title, Span.OfPositive(values))
            : PlotBase.AddLinear(model, position, title, Span.Of(values));

    private static AreaSeries Area(
        string name,
        int index,
        IReadOnlyList<double> edges,
        IReadOnlyList<double> counts,
        double floor
    )
    {
        var area = new AreaSeries
        {
            Title = name,
            Color = Palette.Series(index),
            Fill = OxyColor.FromAColor(70, Palette.Series(index)),
            StrokeThickness = 1,
            Color2 = OxyColors.Transparent,
        };
        for (int i = 0; i < counts.Count; i++)
        {
            double top = Math.Max(counts[i], floor);
            area.Points.AddRange([new DataPoint(edges[i], top), new DataPoint(edges[i + 1], top)]);
            area.Points2.AddRange([new DataPoint(edges[i], floor), new DataPoint(edges[i + 1], floor)]);
        }
        return area;
    }
}
