namespace SensorProfile.Drift.Archive;

/// <summary>One pixel of a list of hot pixels.</summary>
/// <param name="Rate">e-/px/s.</param>
/// <param name="Uncertainty">One standard uncertainty, e-/px/s.</param>
/// <param name="Doubling">Doubling temperature, °C; NaN when not measured.</param>
/// <param name="Flickers">Whether it flickers.</param>
internal readonly record struct ListedPixel(double Rate, double Uncertainty, double Doubling, bool Flickers);
