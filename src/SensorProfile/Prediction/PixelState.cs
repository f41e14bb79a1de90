namespace SensorProfile.Prediction;

/// <summary>One pixel as the maps know it.</summary>
/// <param name="Rate">Dark rate at the reference temperature, glow included, e-/px/s.</param>
/// <param name="Uncertainty">Its standard uncertainty.</param>
/// <param name="Outstanding">Whether it stands out from the ordinary pixels and follows a temperature law of its
/// own.</param>
/// <param name="Doubling">Its own doubling temperature at the reference, °C; not a number when it has no law of its
/// own.</param>
/// <param name="DoublingUncertainty">Its standard uncertainty, °C.</param>
/// <param name="Glow">Part of the rate that is glow, e-/px/s.</param>
internal readonly record struct PixelState(
    double Rate,
    double Uncertainty,
    bool Outstanding,
    double Doubling,
    double DoublingUncertainty,
    double Glow
);
