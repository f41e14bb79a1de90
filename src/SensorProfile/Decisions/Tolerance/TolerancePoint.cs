namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far each limit is used up at one mismatch; 1 is the limit.</summary>
/// <param name="Mismatch">Darks warmer than the lights by, °C; negative when colder.</param>
/// <param name="Typical">Spread over pixels that are not hot; null when not known.</param>
/// <param name="HotPixels">Share of pixels with a visible residual; null when not known.</param>
/// <param name="Glow">Residual of the glow.</param>
/// <param name="Level">Gradient left by the level.</param>
internal sealed record TolerancePoint(double Mismatch, double? Typical, double? HotPixels, double Glow, double Level);
