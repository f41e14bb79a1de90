namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>A point with its standard uncertainty.</summary>
/// <param name="X">Abscissa.</param>
/// <param name="Y">Ordinate.</param>
/// <param name="Uncertainty">Standard uncertainty of the ordinate; 0 draws no bar.</param>
internal readonly record struct BarPoint(double X, double Y, double Uncertainty);
