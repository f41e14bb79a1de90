using OxyPlot;

namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>One plot of a figure.</summary>
/// <param name="Model">The plot.</param>
/// <param name="Aspect">Height over width at full width.</param>
internal sealed record Panel(PlotModel Model, double Aspect);
