namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>A label on a picture of the sensor.</summary>
/// <param name="Text">The words.</param>
/// <param name="X">Column of their middle, from 1.</param>
/// <param name="Y">Row of their middle, from 1.</param>
internal sealed record PictureWords(string Text, double X, double Y);
