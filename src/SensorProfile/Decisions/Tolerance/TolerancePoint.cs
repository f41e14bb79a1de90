namespace SensorProfile.Decisions.Tolerance;

/// <summary>How much of each limit is used at one mismatch; 1 is the limit.</summary>
/// <param name="Mismatch">How much warmer than the lights the darks are, °C; negative when colder.</param>
/// <param name="Typical">Spread over pixels that are not hot; null when not known.</param>
/// <param name="HotPixels">Share of pixels with a visible residual; null when not known.</param>
/// <param name="Glow">Residual of the glow.</param>
/// <param name="Level">Gradient left by the level.</param>
internal sealed record TolerancePoint(double Mismatch, double? Typical, double? HotPixels, double Glow, double Level);
