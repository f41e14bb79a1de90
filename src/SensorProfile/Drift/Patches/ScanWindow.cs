namespace SensorProfile.Drift.Patches;

/// <summary>A window of the scan statistic.</summary>
/// <param name="X">First column, 0-based.</param>
/// <param name="Y">First row, 0-based.</param>
/// <param name="Width">px.</param>
/// <param name="Height">px.</param>
/// <param name="Count">Points inside.</param>
/// <param name="Ratio">Logarithm of the likelihood ratio.</param>
internal readonly record struct ScanWindow(int X, int Y, int Width, int Height, int Count, double Ratio);
