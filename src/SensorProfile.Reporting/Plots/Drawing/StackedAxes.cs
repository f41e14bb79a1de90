using OxyPlot;
using OxyPlot.Axes;

namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>A plot with a second, lower part for residuals over the same abscissa.</summary>
internal static class StackedAxes
{
    /// <summary>Key of the lower ordinate.</summary>
    public const string Lower = "lower";

    private const double Split = 0.34; // height of the lower part
    private const double Gap = 0.05;

    /// <summary>Moves the ordinate of the plot up and adds one below it.</summary>
    /// <param name="model">The plot, with its ordinate.</param>
    /// <param name="upper">The ordinate that moves up.</param>
    /// <param name="title">Quantity and unit of the lower part.</param>
    /// <param name="range">Range of the lower part.</param>
    public static LinearAxis AddLower(PlotModel model, Axis upper, string title, Span range)
    {
        upper.StartPosition = Split + Gap / 2;
        LinearAxis lower = PlotBase.AddLinear(model, AxisPosition.Left, title, range);
        lower.Key = Lower;
        lower.EndPosition = Split - Gap / 2;
        PlotBase.MarkZero(lower);
        lower.IntervalLength = 30; // points between labels: this part is not tall
        return lower;
    }
}
