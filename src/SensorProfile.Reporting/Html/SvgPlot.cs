using System.Globalization;
using OxyPlot;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Html;

/// <summary>A plot as an SVG element of the page.</summary>
internal static class SvgPlot
{
    /// <summary>The element.</summary>
    /// <param name="panel">The plot.</param>
    /// <param name="width">Width in the plot's own units, in which letters are 8.5 high.</param>
    /// <param name="stretch">Height relative to the panel's own proportions.</param>
    /// <param name="id">Unique in the page.</param>
    /// <param name="cssClass">Class of the element.</param>
    /// <param name="label">What a screen reader says, already escaped.</param>
    public static string Text(Panel panel, double width, double stretch, string id, string cssClass, string label)
    {
        double height = Math.Round(width * panel.Aspect * stretch);
        var context = new PlotSvg(id);
        ((IPlotModel)panel.Model).Update(true);
        ((IPlotModel)panel.Model).Render(context, new OxyRect(0, 0, width, height));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<svg class=\"{cssClass}\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" "
                + $"role=\"img\" aria-label=\"{label}\">\n{context.Elements}</svg>\n"
        );
    }
}
