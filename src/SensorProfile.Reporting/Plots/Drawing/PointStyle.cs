using OxyPlot;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>How points are drawn.</summary>
/// <param name="Title">Name in the legend; null for none.</param>
/// <param name="Colour">Colour.</param>
/// <param name="Marker">Shape.</param>
/// <param name="Filled">Filled, or hollow for points left out of a fit.</param>
/// <param name="Scale">Size relative to the usual one.</param>
internal sealed record PointStyle(
    string? Title,
    OxyColor Colour,
    MarkerType Marker,
    bool Filled = true,
    double Scale = 1
)
{
    /// <summary>The style of the n-th series of a plot.</summary>
    public static PointStyle Of(int index, string? title, bool filled = true) =>
        new(title, Palette.Series(index), Palette.Marker(index), filled);
}
