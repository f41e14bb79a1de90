namespace SensorProfile.Simulation.Truth;

/// <summary>A pixel, or the first bad pixel of a column.</summary>
/// <param name="X">Column, 1-based as FITS counts.</param>
/// <param name="Y">Row, 1-based.</param>
internal sealed record TruePlace(int X, int Y);
