using OxyPlot;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Marks of one kind on a picture of the sensor.</summary>
/// <param name="Title">Name in the legend.</param>
/// <param name="Colour">Colour.</param>
/// <param name="Marker">Shape.</param>
/// <param name="Size">Half of its width, points.</param>
/// <param name="Filled">Filled or hollow.</param>
/// <param name="Places">Column and row, from 1.</param>
internal sealed record PictureMarks(
    string Title,
    OxyColor Colour,
    MarkerType Marker,
    double Size,
    bool Filled,
    IReadOnlyList<(double X, double Y)> Places
);
